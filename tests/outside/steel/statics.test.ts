import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import type { SpanLoad, SpanStatics } from '../../../calc/steel/simple-span.ts';
import { explained } from '../../../calc/words/explain.ts';

function hung(member: object, loads: readonly SpanLoad[]): SpanStatics {
  const { result } = explained((tell) => CALC_KINDS.get('hung')!({ member, loads }, tell));
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value as SpanStatics;
}

const level = (length: number) => ({ from: [0, 0, 12], to: [length, 0, 12] });
const points = (...loads: readonly [at: number, pounds: number][]): SpanLoad[] =>
  loads.map(([at, pounds]) => ({ at, pounds }));
const line = (from: number, to: number, poundsPerFoot: number): SpanLoad => ({ from, to, poundsPerFoot });

/** Reactions as printed on public pages of solved problems (in kN and m there; statics knows no unit). */
const PRINTED: readonly [
  what: string,
  length: number,
  loads: SpanLoad[],
  reactions: [number, number],
  moment: number,
][] = [
  ['one point', 4, points([1, 10]), [7.5, 2.5], 7.5],
  ['a point and a line', 4, [...points([1, 10]), line(0, 4, 10)], [27.5, 22.5], 25.3125],
  ['three points and a line', 8, [...points([2, 10], [5, 30], [7, 20]), line(0, 8, 7.5)], [51.25, 68.75], 132.5],
  ['two lines in part', 10, [...points([8, 100]), line(0, 5, 40), line(8, 10, 40)], [178, 202], 396.05],
  ['a line over half', 8, [...points([6, 40]), line(0, 4, 20)], [70, 50], 122.5],
  ['a line at the end', 20, [...points([5, 50]), line(15, 20, 10)], [43.75, 56.25], 218.75],
];

describe('worked examples', () => {
  test.each(PRINTED)('%s', (_, length, loads, reactions, moment) => {
    const got = hung(level(length), loads);
    expect(got.reactions[0]).toBeCloseTo(reactions[0], 9);
    expect(got.reactions[1]).toBeCloseTo(reactions[1], 9);
    expect(got.moment).toBeCloseTo(moment, 9);
  });
  test('a line over all of it: w L / 2 and w L^2 / 8, in the middle', () => {
    expect(hung(level(30), [line(0, 30, 6)])).toEqual({ reactions: [90, 90], moment: 675, at: 15 });
  });
  test('nothing hung', () => {
    expect(hung(level(30), [])).toEqual({ reactions: [0, 0], moment: 0, at: 0 });
  });
  test('a sloping member turns by what lies in the plan: 3 up, 4 along', () => {
    const got = hung({ from: [0, 0, 10], to: [8, 0, 16] }, points([5, 100]));
    expect(got.reactions).toEqual([50, 50]);
    expect(got.moment).toBeCloseTo(50 * 4, 9);
    expect(got.at).toBe(5);
  });
  test('a member as two numbers is a level line', () => {
    expect(hung({ from: 0, to: 10 }, points([4, 100]))).toEqual({ reactions: [60, 40], moment: 240, at: 4 });
  });
});

const span = fc.double({ min: 1, max: 120, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const weight = fc.double({ min: 0, max: 500, noNaN: true });
const anyLoads = span.chain((length) =>
  fc
    .array(
      fc.oneof(
        fc.record({ at: share.map((at) => at * length), pounds: weight }),
        fc.tuple(share, share, weight).map(([a, b, poundsPerFoot]) => ({
          from: Math.min(a, b) * length,
          to: Math.max(a, b) * length,
          poundsPerFoot,
        })),
      ),
      { minLength: 1, maxLength: 8 },
    )
    .map((loads) => ({ length, loads })),
);

/** The moment at a place by adding up thin slices: no formula of the calculation. */
function momentAt(x: number, first: number, loads: readonly SpanLoad[]): number {
  const SLICES = 400;
  let moment = first * x;
  for (const load of loads) {
    if ('at' in load) moment -= load.at < x ? load.pounds * (x - load.at) : 0;
    else
      for (let i = 0; i < SLICES; i++) {
        const wide = (load.to - load.from) / SLICES;
        const at = load.from + (i + 0.5) * wide;
        if (at < x) moment -= load.poundsPerFoot * wide * (x - at);
      }
  }
  return moment;
}

describe('any loads', () => {
  test('the reactions carry them, and turn nothing about either end', () => {
    fc.assert(
      fc.property(anyLoads, ({ length, loads }) => {
        const { reactions } = hung(level(length), loads);
        const each = loads.map((load) =>
          'at' in load
            ? ([load.pounds, load.at] as const)
            : ([load.poundsPerFoot * (load.to - load.from), (load.from + load.to) / 2] as const),
        );
        const total = each.reduce((sum, [pounds]) => sum + pounds, 0);
        const turning = each.reduce((sum, [pounds, at]) => sum + pounds * at, 0);
        expect(reactions[0] + reactions[1]).toBeCloseTo(total, 6);
        expect(reactions[1] * length).toBeCloseTo(turning, 4);
      }),
    );
  });
  test('the moment told is that of slices there, and no place has more', () => {
    fc.assert(
      fc.property(anyLoads, ({ length, loads }) => {
        const { reactions, moment, at } = hung(level(length), loads);
        const slack = 1e-3 * (1 + moment);
        expect(Math.abs(momentAt(at, reactions[0], loads) - moment)).toBeLessThan(slack);
        for (let i = 0; i <= 60; i++)
          expect(momentAt((length * i) / 60, reactions[0], loads)).toBeLessThanOrEqual(moment + slack);
      }),
      { numRuns: 60 },
    );
  });
});

test('the steps say what was summed, and that capacity is checked by others', () => {
  const { steps } = explained((tell) =>
    CALC_KINDS.get('hung')!({ member: level(10), loads: [{ at: 4, pounds: 100 }] }, tell),
  );
  expect(steps.map(({ find, result }) => [find, result])).toEqual([
    ['reaction at the first end', 60],
    ['reaction at the last end', 40],
    ['largest moment', 240],
  ]);
  expect(steps.at(-1)!.source).toContain('capacity is checked by others');
});

const refusal = (input: unknown): string => {
  const { result } = explained((tell) => CALC_KINDS.get('hung')!(input, tell));
  return result.ok ? 'answered' : result.errors.map(({ place, says }) => `${place}: ${says}`).join('; ');
};

test('what is wrong is refused by its place', () => {
  expect(refusal({ member: level(10), loads: [{ at: 11, pounds: 1 }] })).toBe(
    'loads[0]: lies past the end of the member, which is 10 ft long',
  );
  expect(refusal({ member: level(10), loads: [line(4, 2, 1)] })).toContain('loads[0].to');
  expect(refusal({ member: level(10), loads: [{ at: -1, pounds: 1 }] })).toContain('loads[0]');
  expect(refusal({ member: { from: [0, 0, 0], to: [0, 0, 12] }, loads: [] })).toContain('upright');
  expect(refusal({ member: { from: [0, 0, 0], to: [0, 0, 0] }, loads: [] })).toContain('one place');
  expect(refusal({ member: { from: [0, 0] }, loads: [] })).toContain('member');
});
