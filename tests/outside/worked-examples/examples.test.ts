import { describe, expect, test } from 'vitest';
import collection from './examples.json' with { type: 'json' };
import { LEFT_OUT } from './left-out.ts';
import { RUNS } from './runs.ts';

/**
 * Published worked examples through the calculations. examples.json holds, for each, where it is printed, how it was
 * read, its inputs, its answers and their tolerance (0: to the letter).
 */

interface Example {
  readonly id: string;
  readonly document: string;
  readonly where: string;
  readonly basis: string;
  readonly inputs: object;
  readonly published: Readonly<Record<string, unknown>>;
  readonly tolerance: Readonly<Record<string, number>>;
}
const examples = collection.examples as readonly unknown[] as readonly Example[];

/** Where the calculation gives another answer than the page, and why it stays so. */
const DISAGREE: Readonly<Record<string, { readonly quantity: string; readonly ours: unknown; readonly why: string }>> =
  {
    'vd-07': {
      quantity: 'vd_v',
      ours: 2.1784,
      why: 'the page uses K = 12.9 for every size; Table 8 gives 8 AWG 0.778 ohm, which is K = 12.84',
    },
    'vd-10': { quantity: 'amps', ours: 67.658, why: 'the page takes 1.73 for the square root of 3' },
    'am-10': {
      quantity: 'size',
      ours: '2',
      why: 'the page asks only that the corrected conductor carries 60 A; its 3 AWG is then good for 67 A, and the 80 A device that 125% of the load needs may not protect it (240.4(B): at most 70 A)',
    },
  };

const far = (ours: unknown, published: unknown, tolerance: number): number => {
  if (typeof ours === 'number' && typeof published === 'number') return Math.abs(ours - published) - tolerance - 1e-12;
  return ours === published ? 0 : Infinity;
};

const differences = (example: Example, answer: Readonly<Record<string, unknown>>): string[] =>
  Object.entries(example.published).flatMap(([quantity, published]) => {
    const ours = answer[quantity];
    const tolerance = example.tolerance[quantity] ?? 0;
    const pairs: [unknown, unknown][] = Array.isArray(published)
      ? published.map((value, at) => [(ours as unknown[])[at], value])
      : [[ours, published]];
    if (Array.isArray(published)) expect(ours).toHaveLength(published.length);
    return pairs.some(([mine, theirs]) => far(mine, theirs, tolerance) > 0) ? [quantity] : [];
  });

describe.each(examples)('$document, $where ($id)', (example) => {
  const answer = RUNS[example.id]?.(example.inputs) ?? {};
  const known = DISAGREE[example.id];
  test(known === undefined ? 'gives the printed answers' : `differs: ${known.why}`, () => {
    expect(differences(example, answer)).toEqual(known === undefined ? [] : [known.quantity]);
    if (known === undefined) return;
    if (typeof known.ours === 'number') expect(answer[known.quantity]).toBeCloseTo(known.ours, 3);
    else expect(answer[known.quantity]).toBe(known.ours);
  });
});

test('every example of the collection is run or left out with a reason, none twice', () => {
  expect(examples.map(({ id }) => id).sort()).toEqual(Object.keys(RUNS).sort());
  expect(collection.leftOut.map(({ id }) => id).sort()).toEqual(Object.keys(LEFT_OUT).sort());
  for (const reason of Object.values(LEFT_OUT)) expect(reason.length).toBeGreaterThan(8);
});
