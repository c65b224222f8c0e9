import fc from 'fast-check';
import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { siteFloor } from '../../../calc/propose/raceways/branch-floor.ts';
import { branchesCost } from '../../../calc/propose/raceways/paid.ts';
import { racewaysPart } from '../../../calc/propose/raceways/raceways-part.ts';
import { routePrices } from '../../../calc/propose/raceways/route-prices.ts';
import { proposeRaceways } from '../../../routing/propose/raceways/propose-raceways.ts';
import { readSiteValue } from '../../../routing/site/file/read.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Raceway, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

type Box = readonly [x: number, y: number];

/** A panel entered at 6 ft, boxes at 11 ft, no steel; every other charger may lose so much. */
function fileOf(boxes: readonly Box[], amps: number, branchDrop: number | null): SiteFile {
  const read = readSiteValue({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'boxes',
    equipment: [{ id: 'P1', kind: 'panelboard', at: [0, 0], size: [3, 1, 6], entry: [0, 0, 6], volts: 208, phases: 3 }],
    drops: boxes.map(([x, y], i) => ({ id: `D${i}`, box: [x, y, 11], cord: 25 })),
    chargers: boxes.map((_, i) => ({
      id: `EV${i}`,
      drop: `D${i}`,
      stalls: [],
      from: 'P1',
      amps,
      volts: 208,
      phases: 1,
      pilot: i % 2 === 0,
      ...(branchDrop !== null && i % 2 === 0 && { branchDrop }),
    })),
    rules: { branchLimit: 2000, tapLimit: 0.3 },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.file;
}

const lotOf = (...wish: Parameters<typeof fileOf>): Site => toSite(fileOf(...wish));

const place = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: -6, max: 6 }))
  .map(([x, y]): Box => [10 * x, 10 * y]);
const boxes = fc.uniqueArray(place, { minLength: 1, maxLength: 4, selector: ([x, y]) => `${x} ${y}` });
const weight = fc.constantFrom(0.01, 0.3, 1, 4, 30);

/** Layouts on the same lines by whatever weights, and by answers that chance takes. */
test('no layout on the lines that were looked at adds less to the bid than the floor', () => {
  let closest = 0;
  fc.assert(
    fc.property(
      boxes,
      fc.constantFrom(16, 32, 48),
      fc.constantFrom(null, 0.25, 0.75),
      weight,
      weight,
      weight,
      (own, amps, branchDrop, raceway, conductor, conduit) => {
        const site = lotOf(own, amps, branchDrop);
        const floor = siteFloor(site, INVENTED_LIST)!;
        const { price: usual, stringerFoot } = routePrices(INVENTED_LIST, site.rules);
        const make = (weights: { raceway: number; conductor: number; conduit: number }, judge: () => number) => ({
          method: { overhead: 'EMT', underground: 'PVC40', riser: 'PVC80' } as const,
          price: {
            overhead: { ...usual.overhead, ...weights },
            underground: usual.underground,
          },
          stringerFoot,
          supportEvery: 10,
          cover: 2,
          share: 0.02,
          mayGoOn: () => true,
          paid: { rounds: 3, floor: floor.feet, judge: () => ({ cost: judge(), fails: () => 0 }) },
        });
        let worse = 1e6;
        const { raceways, paid } = proposeRaceways(
          site,
          make({ raceway, conductor, conduit }, () => worse--),
        );
        const drawn: Site = {
          ...site,
          raceways: raceways.map((one, i): Raceway => ({ id: `N${i}`, ...one })),
        };
        const [one] = paid;
        const over = one!.ways.reduce(
          (sum, { id, feet, counted }) => sum + counted * floor.over(byId(site.chargers).get(id)!, feet),
          0,
        );
        const least = one!.floor + over + own.length * floor.circuit + own.length * floor.drop(11);
        const cost = branchesCost(drawn, INVENTED_LIST, 'P1', one!.chargers);
        expect(least).toBeGreaterThan(0);
        expect(cost).toBeGreaterThanOrEqual(least);
        closest = Math.max(closest, least / cost);
      },
    ),
    { numRuns: 12 },
  );
  // A bound of nothing would hold too.
  expect(closest).toBeGreaterThan(0.78);
});

/** The least that branches to two boxes 90 ft off may be, by how much of their volts each may lose. */
function leastFor(branchDrop: number | null): { readonly least: number; readonly cost: number } {
  const ground = fileOf(
    [
      [90, 0],
      [90, 10],
    ],
    32,
    branchDrop,
  );
  const { part, file } = racewaysPart(
    ground,
    INVENTED_LIST,
    () => {},
    () => true,
    { answers: 5 },
  );
  const { value, bound } = part.also![0]!;
  expect(file.raceways!.length).toBeGreaterThan(0);
  return { least: bound, cost: value };
}

test('conductors that a limit of drop makes wider raise the floor with the price, which it stays under', () => {
  const [free, loose, tight] = [null, 3, 0.5].map(leastFor) as [Least, Least, Least];
  expect(loose).toEqual(free);
  expect(tight.cost).toBeGreaterThan(1.1 * free.cost);
  expect(tight.least).toBeGreaterThan(1.1 * free.least);
  for (const { least, cost } of [free, tight]) {
    expect(least).toBeLessThanOrEqual(cost);
    expect(least).toBeGreaterThan(0.7 * cost);
  }
});

type Least = ReturnType<typeof leastFor>;
