import { expect, test } from 'vitest';
import { proposeDrops } from '../../../../routing/propose/drops/propose-drops.ts';
import type { Point2, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { doubleRows, WIDTH } from '../../../calc/propose/hand/lots.ts';

const MAKE = { cord: 25, retractorBelow: 1, elevation: 11, holds: 1 };

/** A canopy drawn with its beams alone, 27 ft apart: most stalls have none over them. */
function beamsOnly(): SiteFile {
  const lot = doubleRows({ along: 6, canopies: 1, volts: 208, away: 40 });
  return { ...lot, members: lot.members!.filter(({ id }) => id.startsWith('B')) };
}

function boxesFor(order: { toward: Point2 | null; isFlipped: boolean; over: 'middle' | 'heads' }) {
  const file = beamsOnly();
  const { drops, without } = proposeDrops(toSite(file), { ...MAKE, order });
  expect(without).toEqual([]);
  return drops.map(({ box, stalls }) => ({ box, stall: file.stalls!.find(({ id }) => id === stalls[0])! }));
}

const WEST: Point2 = [-40, 0];

test.each(['middle', 'heads'] as const)(
  'drops over the %s of stalls hang on one line at one height a row, one stripe apart, pairs facing',
  (over) => {
    const placed = boxesFor({ toward: WEST, isFlipped: false, over });
    const rows = [1, -1].map((side) =>
      placed.filter(({ stall }) => Math.sign(stall.at[1]) === side).sort((a, b) => a.box[0] - b.box[0]),
    );
    for (const row of rows) {
      expect(new Set(row.map(({ box: [, y, z] }) => `${y} ${z}`)).size).toBe(1);
      row.slice(1).forEach(({ box }, i) => {
        expect(box[0] - row[i]!.box[0]).toBeCloseTo(WIDTH, 6);
      });
    }
    expect(rows[0]!.map(({ box: [x] }) => x)).toEqual(rows[1]!.map(({ box: [x] }) => x));
  },
);

test('drops hang on the side of what feeds them, or on the other, and no two within 3 ft', () => {
  for (const [toward, isFlipped, side] of [
    [WEST, false, -1],
    [[200, 0], false, 1],
    [WEST, true, 1],
  ] as const) {
    const placed = boxesFor({ toward, isFlipped, over: 'middle' });
    for (const { box, stall } of placed) expect(Math.sign(box[0] - stall.at[0])).toBe(side);
    for (const [i, { box: a }] of placed.entries())
      for (const { box: b } of placed.slice(0, i)) expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(3);
  }
});

test('over the heads cords still cover every stall, and the way to the middle of the rows is shorter', () => {
  const off = (over: 'middle' | 'heads'): number =>
    boxesFor({ toward: WEST, isFlipped: false, over }).reduce((sum, { box }) => sum + Math.abs(box[1]), 0);
  expect(off('heads')).toBeLessThan(off('middle') - 12);
});

/** Rows of slanted stalls, heads together under one canopy whose steel is 16 ft up, or 12 and so much more. */
function slanted(higher = 4): SiteFile {
  const lot = doubleRows({ along: 6, canopies: 1, volts: 208, away: 40 });
  const { members, columns, aisles, ...rest } = lot;
  const lifted = members!.map(({ from, to, ...one }) => {
    const up = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [x, y, z + higher];
    return { ...one, from: up(from), to: up(to) };
  });
  return {
    ...rest,
    members: lifted,
    stalls: lot.stalls!.map((stall) => ({
      ...stall,
      at: [stall.at[0] / Math.sin(Math.PI / 3), Math.sign(stall.at[1]) * 20],
      heading: stall.heading - 30,
    })),
  };
}

test('over the inner stripes of slanted stalls both rows hang nearer to the middle between them', () => {
  const site = toSite(slanted());
  const off = (isInner: boolean): number => {
    const order = { toward: WEST, isFlipped: false, isInner, over: 'middle' } as const;
    const { drops } = proposeDrops(site, { ...MAKE, order });
    expect(drops.length).toBeGreaterThan(8);
    return drops.reduce((sum, { box: [, y] }) => sum + Math.abs(y), 0) / drops.length;
  };
  expect(off(true)).toBeLessThan(off(false) - 1);
});

test('low under the steel drops hang where it still holds them, and no lower than where there is none', () => {
  const site = toSite(slanted());
  const heights = (lower: number): number[] => {
    const order = { toward: WEST, isFlipped: false, lower, over: 'middle' } as const;
    return proposeDrops(site, { ...MAKE, order }).drops.map(({ box: [, , z] }) => z);
  };
  const [usual, low] = [heights(0), heights(100)];
  const steel = 16.5;
  expect(Math.max(...usual)).toBeGreaterThan(Math.max(...low));
  expect(steel - Math.min(...low)).toBeLessThanOrEqual(site.rules.hangReach + 1e-9);
  expect(Math.min(...low)).toBeGreaterThanOrEqual(MAKE.elevation);
});

test('under steel a little too high for a ladder drops hang as high as one reaches, so that no lift is paid by the day', () => {
  const heights = (higher: number, lift = 12): ReadonlySet<number> => {
    const site = toSite({ ...slanted(higher), rules: { workHeight: { ladder: 7, lift } } });
    return new Set(proposeDrops(site, MAKE).drops.map(({ box: [, , z] }) => z));
  };
  // A foot under steel at 14 and 14.5 ft is past the 12 ft of a ladder; 12 ft is within the 3 ft that they may hang.
  expect(heights(2)).toEqual(new Set([12]));
  expect([...heights(2, 20)].every((z) => z > 12)).toBe(true);
  // Under 16 ft it would hang too far below what holds it.
  expect([...heights(4)].every((z) => z > 12)).toBe(true);
});

test.each([
  ['beside', WIDTH],
  ['facing', 0],
] as const)('drops with two cords hang %s their two stalls, one after the other on one line', (pairs, apart) => {
  const file: SiteFile = { ...beamsOnly(), rules: { vehicle: 'sedan', cordLimit: 30 } };
  const order = { toward: WEST, isFlipped: false, over: 'middle', pairs } as const;
  const { drops, without } = proposeDrops(toSite(file), { ...MAKE, cord: 30, holds: 2, order });
  expect(without).toEqual([]);
  const at = new Map(file.stalls!.map((stall) => [stall.id, stall.at]));
  const inPairs = drops.filter(({ stalls: [a, b] }) => {
    const [one, other] = [at.get(a!)!, at.get(b ?? a!)!];
    return b !== undefined && Math.abs(Math.abs(one[0] - other[0]) - apart) < 1e-6;
  });
  expect(inPairs.length).toBe(6);
  for (const { box, stalls } of inPairs)
    expect(box[0]).toBeCloseTo((at.get(stalls[0]!)![0] + at.get(stalls[1]!)![0]) / 2, 6);
});
