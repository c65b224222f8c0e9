import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendsOf } from '../../../routing/network/bends.ts';
import { pullpointsOnRun } from '../../../routing/network/pullpoints.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import { stretchesBetween } from '../../../routing/network/stretch.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { drawings, siteOfDrawing } from './random-sites.ts';
import { oneRun, raceway } from './sites.ts';

// Up 5, along 20, left 10, down 3: bends at 5, 25 and 35 ft of a run of 38.
const stepped = runsOf(
  oneRun(
    [
      raceway('R1', [
        [0, 0, 6],
        [0, 0, 11],
        [20, 0, 11],
        [20, 10, 11],
        [20, 10, 8],
      ]),
    ],
    [0, 0, 6],
    [20, 10, 8],
  ),
).runs[0]!;

describe('stretches of a run', () => {
  test('without a break there is one, with all the bends', () => {
    const [only, ...more] = stretchesBetween(stepped, []);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ from: 0, to: 38, length: 38, bends: 3, bendDegrees: 270 });
    expect(only!.path).toEqual(stepped.path);
    expect(only!.legs).toEqual(stepped.legs);
  });
  test('a break between bends parts them', () => {
    const parts = stretchesBetween(stepped, [15]);
    expect(parts.map(({ from, to, bends }) => [from, to, bends])).toEqual([
      [0, 15, 1],
      [15, 38, 2],
    ]);
    expect(parts[0]!.path.at(-1)).toEqual([10, 0, 11]);
    expect(parts[1]!.path).toEqual([
      [10, 0, 11],
      [20, 0, 11],
      [20, 10, 11],
      [20, 10, 8],
    ]);
  });
  test('a bend at a break is in neither stretch', () => {
    expect(stretchesBetween(stepped, [25]).map(({ bends }) => bends)).toEqual([1, 1]);
    expect(stretchesBetween(stepped, [5, 25, 35]).map(({ bends }) => bends)).toEqual([0, 0, 0, 0]);
  });
  test('a break at a corner leaves the corner the end of one and the start of the next', () => {
    const parts = stretchesBetween(stepped, [25]);
    expect(parts.map(({ path }) => path)).toEqual([stepped.path.slice(0, 3), stepped.path.slice(2)]);
    expect(parts.map(({ legs }) => legs)).toEqual([
      ['R1', 'R1'],
      ['R1', 'R1'],
    ]);
  });
  test('breaks come in any order; repeated ones and those at the ends cut nothing', () => {
    const parts = stretchesBetween(stepped, [30, 0, 15, 38, 15, -4, 90]);
    expect(parts.map(({ from, to }) => [from, to])).toEqual([
      [0, 15],
      [15, 30],
      [30, 38],
    ]);
  });
  test('two breaks on one straight cut it twice', () => {
    const parts = stretchesBetween(stepped, [10, 12]);
    expect(parts[1]).toMatchObject({
      from: 10,
      to: 12,
      path: [
        [5, 0, 11],
        [7, 0, 11],
      ],
      legs: ['R1'],
      bends: 0,
    });
  });
  test('a charger without a run has none', () => {
    expect(stretchesBetween({ path: [], legs: [] }, [3])).toEqual([]);
  });
  test('they lie end to end, and nothing of the run is lost', () => {
    fc.assert(
      fc.property(
        drawings,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }),
        (drawing, shares) => {
          for (const run of runsOf(siteOfDrawing(drawing)).runs) {
            if (run.length === null || run.length < 1) continue;
            const parts = stretchesBetween(
              run,
              shares.map((share) => share * run.length!),
            );
            expect(parts[0]!.path[0]).toEqual(run.path[0]);
            expect(parts.at(-1)!.path.at(-1)).toEqual(run.path.at(-1));
            expect(parts.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(run.length, 6);
            parts.slice(1).forEach((part, i) => {
              expect(part.path[0]).toEqual(parts[i]!.path.at(-1));
              expect(part.from).toBe(parts[i]!.to);
            });
            for (const { path, legs } of parts) expect(legs).toHaveLength(path.length - 1);
            expect(parts.reduce((sum, { bends }) => sum + bends, 0)).toBeLessThanOrEqual(run.bends);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('pull points on a run', () => {
  const on = (...at: Point3[]) =>
    pullpointsOnRun(
      stepped,
      at.map((p, i) => ({ id: `PP${i}`, at: p })),
      0.25,
    ).map(({ id, at: along }) => [id, along]);
  test('are those within the tolerance of it, in order of travel', () => {
    expect(on([18, 0.1, 11], [3, 0, 11], [3, 0.3, 11], [3, 0, 12])).toEqual([
      ['PP1', 8],
      ['PP0', 23],
    ]);
  });
  test('one near a corner is at the corner', () => {
    expect(on([19.9, 0.1, 11])).toEqual([['PP0', 25]]);
  });
  test('one on the upright part is found by its elevation', () => {
    expect(on([0, 0, 9], [0, 0, 20])).toEqual([['PP0', 3]]);
  });
  test('one beside a tap is not on the run', () => {
    const tapped = runsOf(
      oneRun(
        [
          raceway('R1', [
            [0, 0, 11],
            [20, 0, 11],
          ]),
        ],
        [0, 0, 6],
        [20, 5, 11],
      ),
    ).runs[0]!;
    const points = [
      { id: 'A', at: [0, 0, 8] as const },
      { id: 'B', at: [20, 3, 11] as const },
      { id: 'C', at: [9, 0, 11] as const },
    ];
    expect(pullpointsOnRun(tapped, points, 0.25)).toEqual([{ id: 'C', at: 14 }]);
  });
  test('none where there are none', () => expect(on()).toEqual([]));
});

describe('bends of a path', () => {
  test('are told by place and degrees', () => {
    expect(bendsOf(stepped.path)).toEqual([
      { at: 1, degrees: 90 },
      { at: 2, degrees: 90 },
      { at: 3, degrees: 90 },
    ]);
  });
  test('a point that repeats the one before is no bend and hides none', () => {
    expect(
      bendsOf([
        [0, 0, 0],
        [5, 0, 0],
        [5, 0, 0],
        [5, 5, 0],
      ]).map(({ degrees }) => degrees),
    ).toEqual([90]);
    expect(
      bendsOf([
        [0, 0, 0],
        [5, 0, 0],
        [5, 0, 0],
        [9, 0, 0],
      ]),
    ).toEqual([]);
  });
  test('a way straight back is one of 180 degrees', () => {
    expect(
      bendsOf([
        [0, 0, 0],
        [5, 0, 0],
        [2, 0, 0],
      ]),
    ).toEqual([{ at: 1, degrees: 180 }]);
  });
});
