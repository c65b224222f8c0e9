import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setOutPoints } from '../../../calc/field/set-out-points.ts';
import { setOutRows } from '../../../calc/field/set-out-rows.ts';
import { placeOffsets, tapeLines } from '../../../calc/field/tape-lines.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Mark, Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from './start-lot.ts';

const LOT = toSite(libraryLot());
const POINTS = setOutPoints(LOT, plan(LOT));
const LINES = tapeLines(LOT.gridlines, LOT.records);
const EIGHTH = { inchParts: 8, decimals: 3 } as const;

describe('points that are set out', () => {
  test('are every box, retractor, pull point, support, column core, pad corner and entry', () => {
    const parts = (list: string, part: string) => POINTS.filter((one) => one.list === list && one.part === part);
    expect(parts('drops', 'box')).toHaveLength(LOT.drops.length);
    expect(parts('drops', 'retractor')).toHaveLength(LOT.drops.filter(({ retractor }) => retractor).length);
    expect(parts('pullpoints', 'at')).toHaveLength(LOT.pullpoints.length);
    expect(parts('columns', 'at')).toHaveLength(LOT.columns.length);
    expect(parts('equipment', 'corner')).toHaveLength(4 * LOT.equipment.length);
    // As many as the takeoff buys.
    const bought = plan(LOT).takeoff.filter(({ item }) => item === 'trapeze' || item === 'hanger');
    expect(parts('raceways', 'support').length).toBe(bought.reduce((sum, { quantity }) => sum + quantity, 0));
  });

  test('are found from the nearest lines of both axes, up from grade and down from the steel', () => {
    // D05 of the sample: box at 52, 9, 11 ft up; lines 1 to 4 at 0, 26, 53 and 79, A at 0.
    const box = POINTS.find(({ of, part }) => of === 'D05' && part === 'box')!;
    const found = placeOffsets(LOT.gridlines, LINES, box.at);
    expect(found.x.nearest).toEqual({ line: '3', feet: -1 });
    expect(found.x.closing).toEqual({ before: { line: '2', feet: 26 }, after: { line: '3', feet: -1 }, sum: 27 });
    expect(found.y.nearest).toEqual({ line: 'A', feet: 9 });
    expect(found.up).toBe(11);
    expect(found.tie).toBeCloseTo(Math.hypot(1, 9), 12);
    const member = LOT.members.find(({ id }) => id === box.steel?.member)!;
    expect(member).toBeDefined();
    expect(box.steel!.under).toBeCloseTo(Math.max(member.from[2], member.to[2]) - 11, 1);
  });
});

test('a curb that the lead names is measured from where it is the nearer, on turned gridlines too', () => {
  const line: Mark = { id: 'a', of: 'curb', what: 'line', by: 'JB', time: 1, line: { axis: 'x', at: [50, 4, 0] } };
  const named = tapeLines(LOT.gridlines, [line]);
  expect(placeOffsets(LOT.gridlines, named, [51, 9, 11]).x.nearest).toEqual({ line: 'curb', feet: 1 });
  const turned = { ...LOT.gridlines, rotation: 90, origin: [0, 0] as const };
  // Their x runs up the site now: the curb lies through the place that it was seen at.
  expect(placeOffsets(turned, tapeLines(turned, [line]), [50, 6, 0]).x.nearest).toEqual({ line: 'curb', feet: 2 });
  const gone: Mark = { id: 'b', of: 'curb', what: 'line', by: 'JB', time: 2, after: ['a'], gone: true };
  expect(tapeLines(LOT.gridlines, [line, gone]).x).toEqual(LINES.x);
});

describe('one tape along a row', () => {
  const rows = setOutRows(LOT, POINTS);

  test('reads every box of the lot once, in order, and ends at the next line', () => {
    const boxes = rows.filter(({ marks }) => marks[0]?.point.part === 'box');
    expect(boxes.flatMap(({ marks }) => marks.map(({ point }) => point.of)).sort()).toEqual(
      LOT.drops.map(({ id }) => id).sort(),
    );
    for (const row of rows) {
      const feet = row.marks.map((mark) => mark.feet);
      expect(feet).toEqual([...feet].sort((a, b) => a - b));
      if (row.end) expect(row.end.feet).toBeGreaterThan(feet.at(-1)!);
    }
  });

  test('its marks are the offsets of its points from where it is hooked', () => {
    for (const row of rows)
      for (const { point, feet } of row.marks) {
        const offsets = placeOffsets(LOT.gridlines, LINES, point.at)[row.axis];
        const hook = LINES[row.axis].find(({ label }) => label === row.zero);
        if (hook) expect(feet).toBeCloseTo(offsets.at - hook.at, 9);
      }
  });
});

/** The figures that the field works by, read back from how they are printed, feet. */
const printed = (feet: number): number => {
  const text = printLength(feet, 'ft', EIGHTH);
  const [, sign, whole, inches = '0', part] = /^(-?)(\d+)' (\d+)(?: (\d+\/\d+))?"$/.exec(text)!;
  const [over, under] = (part ?? '0/1').split('/').map(Number);
  return (sign ? -1 : 1) * (Number(whole) + (Number(inches) + over! / under!) / 12);
};

test('sums close to the eighth of an inch as printed, and a slip of half an inch in any one reading opens a sum or the tie', () => {
  const at = fc.tuple(fc.integer({ min: 32, max: 2400 }), fc.integer({ min: 32, max: 520 }));
  const site: Site['gridlines'] = { x: LOT.gridlines.x, y: [...LOT.gridlines.y, { label: 'Z', at: 60 }] };
  const lines = tapeLines(site, []);
  fc.assert(
    fc.property(
      at,
      fc.constantFrom('x before', 'x after', 'y before', 'tie'),
      fc.constantFrom(1, -1),
      ([x, y], which, sign) => {
        const { x: across, y: up, tie } = placeOffsets(site, lines, [x / 32, y / 32, 11]);
        fc.pre(
          across.closing !== null &&
            up.closing !== null &&
            Math.abs(across.nearest!.feet) > 1 &&
            Math.abs(up.nearest!.feet) > 1,
        );
        const readings = {
          'x before': printed(across.closing!.before.feet),
          'x after': printed(-across.closing!.after.feet),
          'y before': printed(up.closing!.before.feet),
          'y after': printed(-up.closing!.after.feet),
          tie: printed(tie!),
        };
        const opens = (read: typeof readings): number => {
          const near = (axis: 'x' | 'y') => Math.min(read[`${axis} before`], read[`${axis} after`]);
          return Math.max(
            Math.abs(read['x before'] + read['x after'] - across.closing!.sum),
            Math.abs(read['y before'] + read['y after'] - up.closing!.sum),
            Math.abs(Math.hypot(near('x'), near('y')) - read.tie),
          );
        };
        expect(opens(readings)).toBeLessThanOrEqual(1 / 48);
        expect(opens({ ...readings, [which]: readings[which] + sign / 24 })).toBeGreaterThan(1 / 48);
      },
    ),
    { numRuns: 200 },
  );
});
