import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachOf } from '../../../routing/reach/reach.ts';
import type { Point2, Point3, SiteFile } from '../../../routing/site/site.ts';
import { CAR, charger, drop, row, siteOf, stall } from './sites.ts';

const quarter = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((n) => n / 4);
const lot = fc
  .record({
    heading: fc.integer({ min: 0, max: 359 }),
    count: fc.integer({ min: 1, max: 4 }),
    at: fc.array(fc.tuple(quarter(-15, 40), quarter(-10, 30)), { minLength: 1, maxLength: 3 }),
    cord: fc.integer({ min: 12, max: 25 }),
    columns: fc.array(fc.tuple(quarter(-10, 40), quarter(-10, 30)), { maxLength: 3 }),
    parking: fc.constantFrom('nose-in' as const, 'back-in' as const, 'either' as const),
  })
  .map(({ heading, count, at, cord, columns, parking }): SiteFile => {
    const { stalls } = row(count, { heading: 90, parking });
    const leaning = stalls.map((one, i) => ({ ...one, heading: 90 + ((heading + 7 * i) % 30) }));
    return {
      format: 'overrow/site',
      version: 1,
      units: 'ft',
      name: 'random',
      vehicles: { car: CAR },
      stalls: leaning,
      columns: columns.map((place, i) => ({ id: `K${i}`, at: place, size: [1, 2], rotation: 15 * i })),
      drops: at.map(([x, y], i) => drop(`D${i}`, [x, y, 11], { retractor: [x + 1, y, 10], cord })),
      chargers: at.map((_, i) => charger(`C${i}`, `D${i}`, [`S${i % count}`])),
    };
  });

/** The site with every place moved, turned, and mirrored where asked: then left is right as well. */
function carried(file: SiteFile, dx: number, dy: number, degrees: number, mirror: boolean): SiteFile {
  const radians = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(radians), Math.sin(radians)];
  const place = ([x, y]: Point2): Point2 => {
    const u = mirror ? -x : x;
    return [c * u - s * y + dx, s * u + c * y + dy];
  };
  const spot = ([x, y, z]: Point3): Point3 => [...place([x, y]), z];
  const angle = (a: number): number => (mirror ? 180 - a : a) + degrees;
  const swapped = { left: 'right', right: 'left', front: 'front', rear: 'rear' } as const;
  return {
    ...file,
    vehicles: {
      car: { ...CAR, inlets: CAR.inlets.map((i) => ({ ...i, side: mirror ? swapped[i.side] : i.side })) },
    },
    stalls: file.stalls!.map((one) => ({ ...one, at: place(one.at), heading: angle(one.heading) })),
    columns: file.columns!.map((one) => ({
      ...one,
      at: place(one.at),
      rotation: mirror ? degrees - (one.rotation ?? 0) : (one.rotation ?? 0) + degrees,
    })),
    drops: file.drops!.map((one) => ({ ...one, box: spot(one.box), retractor: spot(one.retractor!) })),
  };
}

const read = (file: SiteFile) => siteOf(file);

describe('on random lots', () => {
  test('no cord beats the straight line, and coverage is the share of the cases that it covers', () => {
    fc.assert(
      fc.property(lot, (file) => {
        const site = read(file);
        for (const { charger: id, cases, worst, coverage } of reachOf(site)) {
          const from = site.drops.find((d) => d.id === site.chargers.find((c) => c.id === id)!.drop)!.retractor!;
          const [x, y, z] = worst.inletAt;
          if (worst.needed !== null)
            expect(worst.needed).toBeGreaterThanOrEqual(Math.hypot(from[0] - x, from[1] - y, from[2] - z) - 1e-9);
          const share = cases.reduce((sum, c) => sum + (c.margin !== null && c.margin >= -1e-9 ? c.share : 0), 0);
          expect(coverage).toBeCloseTo(share, 9);
          const margins = cases.map(({ margin }) => margin ?? Number.NEGATIVE_INFINITY);
          expect(worst.margin ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(Math.min(...margins) + 1e-9);
        }
      }),
    );
  });

  test('moving, turning and mirroring the whole site changes no needed length', () => {
    fc.assert(
      fc.property(
        lot,
        fc.tuple(quarter(-900, 900), quarter(-900, 900), fc.integer({ min: 0, max: 359 }), fc.boolean()),
        (file, [dx, dy, degrees, mirror]) => {
          const before = reachOf(read(file));
          const after = reachOf(read(carried(file, dx, dy, degrees, mirror)));
          after.forEach((reach, i) => {
            reach.cases.forEach(({ needed }, k) => {
              const was = before[i]!.cases[k]!.needed;
              if (was === null) expect(needed).toBeNull();
              else expect(needed).toBeCloseTo(was, 6);
            });
            expect(reach.overVehicle).toBe(before[i]!.overVehicle);
          });
        },
      ),
    );
  });

  test('adding a vehicle never improves a case, unless it comes to stand under a retractor', () => {
    fc.assert(
      fc.property(
        lot,
        fc.tuple(quarter(-20, 45), quarter(-20, 30), fc.integer({ min: 0, max: 359 })),
        (file, [x, y, heading]) => {
          const extra = stall('X', [x, y], { heading });
          const before = reachOf(read(file));
          const after = reachOf(read({ ...file, stalls: [...file.stalls!, extra] }));
          after.forEach((reach, i) => {
            if (reach.overVehicle === 'X') return;
            reach.cases.forEach(({ margin }, k) => {
              const was = before[i]!.cases[k]!.margin;
              expect(margin ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual((was ?? Number.NEGATIVE_INFINITY) + 1e-9);
            });
            expect(reach.coverage).toBeLessThanOrEqual(before[i]!.coverage + 1e-9);
          });
        },
      ),
    );
  });

  test('a longer cord only gains', () => {
    fc.assert(
      fc.property(lot, (file) => {
        const before = reachOf(read(file));
        const longer = { ...file, drops: file.drops!.map((d) => ({ ...d, cord: d.cord + 3 })) };
        reachOf(read(longer)).forEach((reach, i) => {
          expect(reach.coverage).toBeGreaterThanOrEqual(before[i]!.coverage - 1e-12);
          if (reach.worst.margin !== null) expect(reach.worst.margin).toBeCloseTo(before[i]!.worst.margin! + 3, 9);
        });
      }),
    );
  });
});
