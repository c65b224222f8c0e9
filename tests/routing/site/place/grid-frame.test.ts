import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';
import { gridWays, isPlainGrid, offGrid, onGrid, setOutPlace } from '../../../../routing/site/place/grid-frame.ts';
import { gridlineWords } from '../../../../routing/site/place/gridline-words.ts';
import { siteOnGrid } from '../../../../routing/site/place/site-on-grid.ts';
import type { Gridlines, Point2, Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { SMALL } from '../../../web/document/small-site.ts';

const feet = fc.double({ min: -2000, max: 2000, noNaN: true });
const place = fc.tuple(feet, feet) as fc.Arbitrary<Point2>;
const degrees = fc.oneof(fc.integer({ min: -360, max: 360 }), fc.double({ min: -720, max: 720, noNaN: true }));

/** Turned counter-clockwise about a place by complex multiplication: an outside statement of the motion. */
function turned(about: Point2, by: number): (at: Point2) => Point2 {
  const [re, im] = [Math.cos((by * Math.PI) / 180), Math.sin((by * Math.PI) / 180)];
  return ([x, y]) => {
    const [a, b] = [x - about[0], y - about[1]];
    return [about[0] + a * re - b * im, about[1] + a * im + b * re];
  };
}

const LINES: Gridlines = {
  x: [
    { label: '1', at: 0 },
    { label: '2', at: 27 },
    { label: '3', at: 54 },
  ],
  y: [
    { label: 'A', at: -10 },
    { label: 'B', at: 10 },
  ],
};

describe('turned gridlines', () => {
  test('of a 3-4-5 triangle measure its legs', () => {
    // atan(3/4): 5 ft along the line are 4 ft to the right and 3 ft up.
    const grid: Gridlines = { ...LINES, rotation: (Math.atan2(3, 4) * 180) / Math.PI, origin: [10, 20] };
    const [u, v] = onGrid(grid, [14, 23]);
    expect([u, v]).toEqual([expect.closeTo(5, 12), expect.closeTo(0, 12)]);
    expect(offGrid(grid, [0, 5])).toEqual([expect.closeTo(7, 12), expect.closeTo(24, 12)]);
    expect(gridWays(grid)).toEqual([
      [expect.closeTo(0.8, 12), expect.closeTo(0.6, 12)],
      [expect.closeTo(-0.6, 12), expect.closeTo(0.8, 12)],
    ]);
  });

  test('that are neither turned nor moved measure the place itself', () => {
    const at: Point2 = [12.3, -4.5];
    for (const grid of [LINES, { ...LINES, rotation: 0 }, { ...LINES, rotation: -360, origin: [0, 0] as const }]) {
      expect(isPlainGrid(grid)).toBe(true);
      expect(onGrid(grid, at)).toBe(at);
    }
    // Without a line there is nothing to measure from but the site.
    expect(setOutPlace({ x: [], y: [], rotation: 30 }, at)).toBe(at);
  });

  test('a place measured from them and put back is that place', () => {
    fc.assert(
      fc.property(place, place, degrees, (at, origin, rotation) => {
        const grid = { ...LINES, origin, rotation };
        const [x, y] = offGrid(grid, onGrid(grid, at));
        expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1e-9);
      }),
    );
  });

  test('a lot turned by any angle together with its gridlines has the same dimensions from them', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 8 }), place, degrees, (places, about, by) => {
        const turn = turned(about, by);
        const grid: Gridlines = { ...LINES, rotation: by, origin: turn([0, 0]) };
        for (const at of places) {
          const [u, v] = setOutPlace(grid, turn(at));
          for (const [lines, now, before] of [
            [grid.x, u, at[0]],
            [grid.y, v, at[1]],
          ] as const) {
            const was = fromGridline(lines, before)!;
            // Half way between two lines rounding decides which is nearer: then both are equally far.
            const is = fromGridline(lines, now)!;
            if (is.label === was.label) expect(Math.abs(is.offset - was.offset)).toBeLessThan(1e-9);
            else expect(Math.abs(Math.abs(is.offset) - Math.abs(was.offset))).toBeLessThan(1e-9);
          }
        }
      }),
    );
  });

  test('say a place as a crew finds it', () => {
    const grid: Gridlines = { ...LINES, rotation: 90, origin: [100, 0] };
    // A quarter turn: along the lines is up the sheet, across them to the left of x = 100.
    expect(gridlineWords([88, 30, 11], grid, 'ft')).toBe(`3' 0" past line 2, 2' 0" past line B, 11' 0" above grade`);
  });

  test('of a file in meters have their origin in feet, their turn as it is', () => {
    const file: SiteFile = {
      ...SMALL,
      units: 'm',
      gridlines: { x: [{ label: '1', at: 3.048 }], rotation: 30, origin: [0.3048, 3.048] },
    };
    const { gridlines } = toSite(file);
    expect(gridlines).toEqual({
      x: [{ label: '1', at: expect.closeTo(10, 9) }],
      y: [],
      rotation: 30,
      origin: [expect.closeTo(1, 9), expect.closeTo(10, 9)],
    });
  });
});

describe('a site laid along its gridlines', () => {
  const asSite = (gridlines: Gridlines): Site => ({ ...toSite(SMALL), gridlines });

  test('is the same object where they lie square to its axes', () => {
    const site = toSite(SMALL);
    expect(siteOnGrid(site)).toBe(site);
  });

  test('keeps what is measured from them, and the compass', () => {
    fc.assert(
      fc.property(place, degrees, (origin, rotation) => {
        const site: Site = { ...asSite({ ...LINES, rotation, origin }), georef: { lon: 1, lat: 2, bearing: 10 } };
        const laid = siteOnGrid(site);
        site.drops.forEach(({ box }, i) => {
          const [u, v] = setOutPlace(site.gridlines, [box[0], box[1]]);
          const [x, y, z] = laid.drops[i]!.box;
          expect(Math.hypot(x - u, y - v)).toBeLessThan(1e-9);
          expect(z).toBe(box[2]);
        });
        if (laid === site) return;
        expect(isPlainGrid(laid.gridlines)).toBe(true);
        // North as seen from the gridlines: counter-clockwise of their y by their bearing.
        expect(laid.georef!.bearing + rotation).toBeCloseTo(10, 9);
        const [stall, before] = [laid.stalls[0]!, site.stalls[0]!];
        expect(stall.heading + rotation).toBeCloseTo(before.heading, 9);
        // What was square to a line stays square to it: the raceway's legs keep their lengths.
        const leg = ({ raceways }: Site) => {
          const [, a, b] = raceways[0]!.path;
          return Math.hypot(a![0] - b![0], a![1] - b![1]);
        };
        expect(leg(laid)).toBeCloseTo(leg(site), 8);
      }),
    );
  });
});

test('equipment and pull points of a turned grid are laid along it with all the rest', () => {
  // Turned by 90 degrees about (10, 20): what lies 3 ft up the drawing from there lies 3 ft along the first axis.
  const site = toSite({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'turned',
    gridlines: { x: [{ label: '1', at: 0 }], y: [{ label: 'A', at: 0 }], rotation: 90, origin: [10, 20] },
    equipment: [
      { id: 'P', kind: 'panelboard', at: [10, 23], size: [3, 1, 6], rotation: 100, entry: [8, 23, 6] },
      { id: 'Q', kind: 'panelboard', at: [10, 20], size: [3, 1, 6], entry: [10, 20, 6] },
    ],
    pullpoints: [{ id: 'PB', at: [5, 20, 11] }],
  });
  const laid = siteOnGrid(site);
  const [p, q] = laid.equipment;
  const near = (got: readonly number[], wanted: readonly number[]): void => {
    expect(got).toHaveLength(wanted.length);
    wanted.forEach((value, i) => {
      expect(got[i]).toBeCloseTo(value, 9);
    });
  };
  near(p!.at, [3, 0]);
  near(p!.entry, [3, 2, 6]);
  near([p!.rotation!, q!.rotation!], [10, -90]);
  near(laid.pullpoints[0]!.at, [0, 5, 11]);
});
