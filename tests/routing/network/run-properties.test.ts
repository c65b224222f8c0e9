import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import { type Drawing, drawings, freeDrawings, moved, siteOfDrawing, squareDrawings } from './random-sites.ts';
import { raceway } from './sites.ts';

const RUNS = { numRuns: 300 };
const runsIn = (drawing: Drawing) => runsOf(siteOfDrawing(drawing)).runs;
const apart = (a: Point3, b: Point3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function expectSameLengths(before: Drawing, after: Drawing): void {
  const was = runsIn(before);
  const is = runsIn(after);
  was.forEach((run, i) => {
    const now = is[i]!;
    if (run.length === null) expect(now.length).toBeNull();
    else {
      expect(now.length).toBeCloseTo(run.length, 7);
      expect(now.taps!.box).toBeCloseTo(run.taps!.box, 7);
      expect(now.bends).toBe(run.bends);
      expect(now.raceways).toEqual(run.raceways);
    }
  });
}

describe('over random sites', () => {
  test('most chargers have a run: the properties below speak of something', () => {
    for (const kind of [squareDrawings, freeDrawings]) {
      const all = fc.sample(kind, { numRuns: 100, seed: 1 }).flatMap(runsIn);
      const withRun = all.filter(({ length }) => length !== null).length;
      expect(withRun / all.length).toBeGreaterThan(0.3);
    }
  });

  test('a path leads from the entry to the box, and its legs add up to the length', () => {
    fc.assert(
      fc.property(drawings, (drawing) => {
        const site = siteOfDrawing(drawing);
        runsOf(site).runs.forEach((run, i) => {
          if (run.length === null) return;
          const from = site.equipment.find(({ id }) => id === run.from)!;
          expect(run.path[0]).toEqual(from.entry);
          expect(run.path.at(-1)).toEqual(site.drops.find(({ id }) => id === site.chargers[i]!.drop)!.box);
          expect(run.legs).toHaveLength(run.path.length - 1);
          const sum = run.legs.reduce((total, _, k) => total + apart(run.path[k]!, run.path[k + 1]!), 0);
          expect(sum).toBeCloseTo(run.length, 6);
          expect(run.taps!.box).toBeLessThanOrEqual(6 + 1e-9);
          expect(run.taps!.equipment).toBeLessThanOrEqual(6 + 1e-9);
        });
      }),
      RUNS,
    );
  });

  test('every leg lies on the raceway that it names', () => {
    fc.assert(
      fc.property(drawings, (drawing) => {
        const site = siteOfDrawing(drawing);
        for (const { path, legs } of runsOf(site).runs)
          legs.forEach((id, k) => {
            if (id === null) return;
            const on = site.raceways.find((one) => one.id === id)!.path;
            const middle = path[k]!.map((c, axis) => (c + path[k + 1]![axis]!) / 2) as unknown as Point3;
            for (const p of [path[k]!, middle, path[k + 1]!]) expect(offPath(p, on)).toBeLessThan(1e-6);
          });
      }),
      RUNS,
    );
  });

  test('moving the whole site changes no length', () => {
    fc.assert(
      fc.property(
        drawings,
        fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
        (drawing, [dx, dy]) => {
          expectSameLengths(
            drawing,
            moved(drawing, ([x, y, z]) => [x + dx, y + dy, z]),
          );
        },
      ),
      RUNS,
    );
  });
  test('lifting or sinking it changes none', () => {
    fc.assert(
      fc.property(drawings, fc.integer({ min: -50, max: 50 }), (drawing, dz) => {
        expectSameLengths(
          drawing,
          moved(drawing, ([x, y, z]) => [x, y, z + dz]),
        );
      }),
      RUNS,
    );
  });
  test('turning it changes none', () => {
    fc.assert(
      fc.property(drawings, fc.integer({ min: 1, max: 359 }), (drawing, degrees) => {
        const c = Math.cos((degrees * Math.PI) / 180);
        const s = Math.sin((degrees * Math.PI) / 180);
        expectSameLengths(
          drawing,
          moved(drawing, ([x, y, z]) => [c * x - s * y, s * x + c * y, z]),
        );
      }),
      RUNS,
    );
  });
  test('mirroring it changes none', () => {
    fc.assert(
      fc.property(drawings, (drawing) => {
        expectSameLengths(
          drawing,
          moved(drawing, ([x, y, z]) => [-x, y, z]),
        );
        expectSameLengths(
          drawing,
          moved(drawing, ([x, y, z]) => [y, x, z]),
        );
      }),
      RUNS,
    );
  });

  test('the order of the lists changes nothing', () => {
    fc.assert(
      fc.property(drawings, fc.infiniteStream(fc.nat()), (drawing, keys) => {
        const shuffled = <T>(list: readonly T[]): T[] =>
          list
            .map((item) => ({ item, key: keys.next().value as number }))
            .sort((a, b) => a.key - b.key)
            .map(({ item }) => item);
        const site = siteOfDrawing(drawing);
        const other: Site = {
          ...site,
          raceways: shuffled(site.raceways),
          equipment: shuffled(site.equipment),
          drops: shuffled(site.drops),
          chargers: shuffled(site.chargers),
        };
        const runs = new Map(runsOf(other).runs.map((run) => [run.charger, run]));
        for (const run of runsOf(site).runs) expect(runs.get(run.charger)).toEqual(run);
      }),
      RUNS,
    );
  });

  test('adding an unconnected raceway changes no run', () => {
    fc.assert(
      fc.property(drawings, (drawing) => {
        const before = runsIn(drawing);
        // Far overhead, out of reach of everything, in the order of ids before all others.
        const apartFromAll = raceway('A0', [
          [0, 0, 90],
          [40, 40, 90],
        ]);
        expect(runsIn({ ...drawing, raceways: [apartFromAll, ...drawing.raceways] })).toEqual(before);
      }),
      RUNS,
    );
  });

  test('adding any raceway never lengthens a run whose box keeps its tap', () => {
    let kept = 0;
    fc.assert(
      fc.property(drawings, drawings, (drawing, other) => {
        const added = { ...other.raceways[0]!, id: 'Z9' };
        const before = runsIn(drawing);
        const after = runsIn({ ...drawing, raceways: [...drawing.raceways, added] });
        before.forEach((run, i) => {
          const now = after[i]!;
          if (run.length === null || now.length === null || Math.abs(now.taps!.box - run.taps!.box) > 1e-9) return;
          if (lastOn(run) !== lastOn(now)) return;
          kept++;
          expect(now.length).toBeLessThanOrEqual(run.length + 1e-7);
        });
      }),
      { ...RUNS, seed: 5 },
    );
    expect(kept).toBeGreaterThan(300);
  });
});

const lastOn = ({ legs }: { legs: readonly (string | null)[] }) => legs.filter((id) => id !== null).at(-1);

function offPath([x, y, z]: Point3, path: readonly Point3[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const square = u[0] ** 2 + u[1] ** 2 + u[2] ** 2;
    const t = square === 0 ? 0 : ((x - a[0]) * u[0] + (y - a[1]) * u[1] + (z - a[2]) * u[2]) / square;
    const s = Math.min(1, Math.max(0, t));
    least = Math.min(least, apart([x, y, z], [a[0] + s * u[0], a[1] + s * u[1], a[2] + s * u[2]]));
  }
  return least;
}
