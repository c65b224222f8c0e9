import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slopeOf } from '../../../../routing/plane/space.ts';
import { type CanopyShape, canopyBays, canopyWidth } from '../../../../routing/propose/rows/canopy-bays.ts';
import {
  beamProfile,
  CANOPY_FORMS,
  LEVELS_AT,
  type RoofForm,
  riseOf,
  risingRun,
  tiltOf,
} from '../../../../routing/propose/rows/canopy-slope.ts';
import type { Point3 } from '../../../../routing/site/site.ts';

const T_FRAME: CanopyShape = {
  spacing: 27,
  columnLines: 1,
  lineGap: 18,
  overhang: 18,
  endOverhang: 0,
  columnSize: 1,
  form: 'one slope',
  tilt: 5,
  rises: 'left',
  levelAt: 'columns',
  beamElevation: 12,
  purlinsAbove: 0.5,
  purlinSpacing: 6,
  side: 'left',
};

/**
 * Rise in 12, inches of common rafter for a foot of run, and degrees: the rafter table stamped on a framing square, as
 * printed there to 1/100 in., and the roof pitch tables beside it. From memory.
 */
const FRAMING_SQUARE = [
  [2, 12.16, 9.46],
  [3, 12.37, 14.04],
  [4, 12.65, 18.43],
  [5, 13.0, 22.62],
  [6, 13.42, 26.57],
  [8, 14.42, 33.69],
  [12, 16.97, 45.0],
] as const;

const feet = fc.integer({ min: 1, max: 240 }).map((n) => n / 8);
const shapes: fc.Arbitrary<CanopyShape> = fc
  .record({
    columnLines: fc.constantFrom(1 as const, 2 as const),
    lineGap: feet,
    overhang: feet,
    form: fc.constantFrom(...CANOPY_FORMS),
    tilt: fc.integer({ min: 0, max: 180 }).map((n) => n / 4),
    rises: fc.constantFrom('left' as const, 'right' as const),
    levelAt: fc.constantFrom(...LEVELS_AT),
    side: fc.constantFrom('left' as const, 'right' as const),
    purlinSpacing: fc.constantFrom(0, 4, 6),
    purlinsAbove: fc.constantFrom(-0.5, 0, 0.5),
  })
  .map((some) => ({ ...T_FRAME, ...some, beamElevation: 60 }));
/** A line of columns that lies at any angle. */
const lines = fc.record({
  x: feet,
  y: feet,
  degrees: fc.integer({ min: 0, max: 359 }),
  bays: fc.integer({ min: 1, max: 4 }),
});

function drawn(shape: CanopyShape, { x, y, degrees, bays }: { x: number; y: number; degrees: number; bays: number }) {
  const turn = (degrees * Math.PI) / 180;
  return canopyBays([x, y], [x + 100 * Math.cos(turn), y + 100 * Math.sin(turn)], bays, shape);
}

describe('the tilt of a canopy', () => {
  test('is what a framing square says of a rise in 12', () => {
    for (const [rise, rafter, degrees] of FRAMING_SQUARE) {
      // A canopy 12 ft wide, whose columns stand at its one edge, rises a foot for each inch in 12.
      const width = { left: 12, right: 0 };
      const tilt = tiltOf(rise, 'one slope', width)!;
      expect(tilt).toBeCloseTo(degrees, 2);
      expect(riseOf({ ...T_FRAME, tilt }, width)).toBeCloseTo(rise, 9);
      const shape = { ...T_FRAME, columnLines: 2 as const, lineGap: 6, overhang: 3, tilt };
      const [beam] = canopyBays([0, 0], [27, 0], 1, shape).beams;
      expect(Math.abs(slopeOf(beam!.from, beam!.to).length - rafter)).toBeLessThanOrEqual(0.01);
      expect(slopeOf(beam!.from, beam!.to).degrees).toBeCloseTo(degrees, 2);
    }
  });

  test('a rise of 1/4 in. a foot is 1.19 degrees (the least for drainage in common practice)', () => {
    expect(tiltOf(0.25, 'one slope', { left: 6, right: 6 })).toBeCloseTo(1.1935, 4);
  });

  test('a canopy of one slope rises to its side, and turns about the drawn columns', () => {
    const { beams, columns } = canopyBays([0, 0], [27, 0], 1, T_FRAME);
    const rise = 18 * Math.tan((5 * Math.PI) / 180);
    expect(beams).toHaveLength(2);
    expect(beams[0]!.from).toEqual([0, -18, expect.closeTo(12 - rise, 8)]);
    expect(beams[0]!.to).toEqual([0, 18, expect.closeTo(12 + rise, 8)]);
    expect(columns.map(({ height }) => height)).toEqual([12, 12]);
    const [other] = canopyBays([0, 0], [27, 0], 1, { ...T_FRAME, rises: 'right' }).beams;
    expect(other!.from[2]).toBeCloseTo(12 + rise, 8);
  });

  test('given at the low edge, nothing lies below that elevation', () => {
    fc.assert(
      fc.property(shapes, lines, (shape, line) => {
        const { beams } = drawn({ ...shape, levelAt: 'low edge' }, line);
        const ends = beams.flatMap(({ from, to }) => [from[2], to[2]]);
        if (ends.length > 0) expect(Math.min(...ends)).toBeCloseTo(60, 7);
      }),
    );
  });

  test('a valley is lowest in its middle, a ridge highest there, and both are straight to either side', () => {
    const two = { ...T_FRAME, columnLines: 2 as const, lineGap: 20, overhang: 5, tilt: 10 };
    const rise = 15 * Math.tan((10 * Math.PI) / 180);
    for (const [form, sign] of [
      ['valley', 1],
      ['ridge', -1],
    ] as const) {
      const { beams, columns } = canopyBays([0, 0], [27, 0], 1, { ...two, form });
      const middle = 12 - sign * 10 * Math.tan((10 * Math.PI) / 180);
      expect(beams.slice(0, 2)).toEqual([
        { from: [0, -5, expect.closeTo(middle + sign * rise, 8)], to: [0, 10, expect.closeTo(middle, 8)] },
        { from: [0, 10, expect.closeTo(middle, 8)], to: [0, 25, expect.closeTo(middle + sign * rise, 8)] },
      ]);
      // The two lines of columns stand as far from the middle as one another.
      for (const { height } of columns) expect(height).toBeCloseTo(12, 8);
    }
  });

  test('it is none beyond 45 degrees', () => {
    expect(tiltOf(13, 'one slope', { left: 12, right: 0 })).toBeNull();
    expect(tiltOf(1, 'flat', { left: 12, right: 0 })).toBeNull();
    expect(() => beamProfile({ ...T_FRAME, tilt: 46 }, { left: 12, right: 0 })).toThrow(RangeError);
  });
});

/** The elevation over a place of the plan on any of the lines; null where none passes over it. */
function steelAt(
  lines: readonly { readonly from: Point3; readonly to: Point3 }[],
  x: number,
  y: number,
): number | null {
  for (const { from, to } of lines) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const t = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy);
    if (t < -1e-9 || t > 1 + 1e-9) continue;
    if (Math.hypot(from[0] + t * dx - x, from[1] + t * dy - y) < 1e-6) return from[2] + t * (to[2] - from[2]);
  }
  return null;
}

describe('a sloping canopy', () => {
  test('has every column as high as the beam over it', () => {
    fc.assert(
      fc.property(shapes, lines, (shape, line) => {
        const { beams, columns } = drawn(shape, line);
        for (const { at, height } of columns) expect(steelAt(beams, at[0], at[1])).toBeCloseTo(height, 6);
      }),
    );
  });

  test('has level purlins, as far above the beams as they are said to be', () => {
    fc.assert(
      fc.property(shapes, lines, (shape, line) => {
        const { beams, purlins } = drawn(shape, line);
        for (const { from, to } of purlins) {
          expect(to[2]).toBe(from[2]);
          // With no overhang at its ends a purlin begins over the first beam.
          expect(steelAt(beams, from[0], from[1])).toBeCloseTo(from[2] - shape.purlinsAbove, 6);
        }
      }),
    );
  });

  test('has every beam at its tilt, and rises by what the form says', () => {
    fc.assert(
      fc.property(shapes, lines, (shape, line) => {
        const { beams } = drawn(shape, line);
        const width = canopyWidth(shape);
        const flat = shape.form === 'flat';
        for (const { from, to } of beams) expect(slopeOf(from, to).degrees).toBeCloseTo(flat ? 0 : shape.tilt, 5);
        const ends = beams.flatMap(({ from, to }) => [from[2], to[2]]);
        expect(Math.max(...ends) - Math.min(...ends)).toBeCloseTo(riseOf(shape, width), 6);
        if (!flat) expect(tiltOf(riseOf(shape, width), shape.form, width)).toBeCloseTo(shape.tilt, 6);
      }),
    );
  });

  test('is seen from above as the flat one of the same measures, bent beams in two parts', () => {
    fc.assert(
      fc.property(shapes, lines, fc.constantFrom<RoofForm>('one slope', 'valley', 'ridge'), (shape, line, form) => {
        const sloped = drawn({ ...shape, form, purlinSpacing: 0 }, line);
        const flat = drawn({ ...shape, form: 'flat', purlinSpacing: 0 }, line);
        expect(sloped.columns.map(({ at }) => at)).toEqual(flat.columns.map(({ at }) => at));
        const run = (each: typeof flat): number =>
          each.beams.reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0);
        expect(run(sloped)).toBeCloseTo(run(flat), 6);
        expect(risingRun(form, canopyWidth(shape))).toBeGreaterThan(0);
      }),
    );
  });

  test('turned about its line is the same canopy: what is measured across it goes with it', () => {
    fc.assert(
      fc.property(shapes, lines, (shape, line) => {
        const heights = (degrees: number) =>
          drawn(shape, { ...line, degrees }).beams.map(({ from, to }) => [from[2], to[2]]);
        const [one, other] = [heights(0), heights(line.degrees)];
        for (const [i, ends] of other.entries())
          for (const [j, z] of ends.entries()) expect(z).toBeCloseTo(one[i]![j]!, 7);
      }),
    );
  });
});
