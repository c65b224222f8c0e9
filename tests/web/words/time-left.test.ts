import { expect, test } from 'vitest';
import { secondsLeft, stretchOf, type WorkStretch } from '../../../web/words/time-left.ts';

const news = (what: string, done: number, of = 600) => ({ what, done, of });

/** As a search tells it: so far by then. */
function leftAfter(told: readonly (readonly [what: string, done: number, at: number])[], now: number): number | null {
  let stretch: WorkStretch | null = null;
  for (const [what, done, at] of told) stretch = stretchOf(stretch, news(what, done), at);
  return secondsLeft(stretch!, told.at(-1)![1], now);
}

test('what is left of steady work is what its steps took until now', () => {
  const told = Array.from({ length: 31 }, (_, i) => ['drops', 10 * i, 1000 * i] as const);
  expect(leftAfter(told, 30_000)).toBe(30);
});

test('work that is gone back to half way is not taken for having done that half in no time', () => {
  expect(
    leftAfter(
      [
        ['drops', 300, 0],
        ['equipment', 0, 20_000],
        ['drops', 300, 30_000],
      ],
      31_000,
    ),
  ).toBeNull();
  const told = [
    ['drops', 300, 0],
    ['equipment', 0, 20_000],
    ['drops', 300, 30_000],
    ['drops', 310, 40_000],
  ] as const;
  expect(leftAfter(told, 40_000)).toBe(290);
});

test('nothing is said at first, and a second at least at the end', () => {
  expect(
    leftAfter(
      [
        ['drops', 0, 0],
        ['drops', 1, 100],
      ],
      100,
    ),
  ).toBeNull();
  expect(
    leftAfter(
      [
        ['drops', 0, 0],
        ['drops', 600, 60_000],
      ],
      60_000,
    ),
  ).toBe(1);
});
