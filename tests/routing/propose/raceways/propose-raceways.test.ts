import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { racewayHeadroom } from '../../../../routing/checks/drops/clear-height.ts';
import { keepoutFindings } from '../../../../routing/checks/keepout-findings.ts';
import { runsOf } from '../../../../routing/network/runs.ts';
import { insideOf } from '../../../../routing/plane/obstacle.ts';
import { distance } from '../../../../routing/plane/space.ts';
import { proposeRaceways } from '../../../../routing/propose/raceways/propose-raceways.ts';
import type { RacewayMake } from '../../../../routing/propose/raceways/raceway-make.ts';
import { sharedOf } from '../../../../routing/reach/shared.ts';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import type { Raceway, Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { outlineOf } from '../../../../routing/standing/outlines.ts';
import { hospitalLot } from '../../../bench/samples/hospital-lot.ts';
import { libraryLot } from '../../../bench/samples/library-lot.ts';

/** Dollars a foot, invented. */
const makeOf = (price: Partial<RacewayMake['price']['overhead']>): RacewayMake => {
  const whole = { raceway: 3, conductor: 2, conduit: 6, circuitsPerConduit: 3, ...price };
  return {
    method: { overhead: 'EMT', underground: 'PVC40', riser: 'PVC80' },
    price: { overhead: whole, underground: whole },
    supportEvery: 10,
    stringerFoot: 12,
    cover: 2,
    share: 1,
    mayGoOn: () => true,
  };
};

function read(value: object): Site {
  const result = readSiteValue(value);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return toSite(result.file);
}

/** The site with the proposal drawn in. */
const drawn = (site: Site, raceways: ReturnType<typeof proposeRaceways>['raceways']): Site => ({
  ...site,
  raceways: [...site.raceways, ...raceways.map((one, i): Raceway => ({ id: `N${i}`, ...one }))],
});

const feetOf = (raceways: readonly Pick<Raceway, 'path'>[]): number =>
  raceways.reduce((sum, { path }) => sum + path.slice(1).reduce((feet, to, i) => feet + distance(path[i]!, to), 0), 0);

/** A panel at the origin, entered at 11 ft, and boxes of drops at the same elevation with nothing else on the site. */
const boxesOnly = (boxes: readonly (readonly [number, number])[]): Site =>
  read({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'boxes',
    equipment: [
      { id: 'P1', kind: 'panelboard', at: [0, 0], size: [3, 1, 6], entry: [0, 0, 11], volts: 208, phases: 3 },
    ],
    drops: boxes.map(([x, y], i) => ({ id: `D${i}`, box: [x, y, 11], cord: 25 })),
    chargers: boxes.map((_, i) => ({
      id: `EV${i}`,
      drop: `D${i}`,
      stalls: [],
      from: 'P1',
      amps: 32,
      volts: 208,
      phases: 1,
    })),
    // So short a tap that every box wants its raceway.
    rules: { branchLimit: 2000, tapLimit: 0.3 },
  });

const place = fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }));

describe('routes whose best length is known', () => {
  // The shortest rectilinear tree of three points is half the perimeter of their box: Hanan, "On Steiner's problem with
  // rectilinear distance", SIAM J. Appl. Math. 14, 1966 (cited from memory).
  test('of a panel and two boxes with raceway alone to pay for is half the perimeter of their box', () => {
    fc.assert(
      fc.property(place, place, (a, b) => {
        const apart = [a, b, [a[0] - b[0], a[1] - b[1]] as const];
        fc.pre(apart.every(([x, y]) => [x, y].every((v) => v === 0 || Math.abs(v) >= 1)));
        const site = boxesOnly([a, b]);
        const { raceways, cost, bound } = proposeRaceways(site, makeOf({ raceway: 1, conductor: 0, conduit: 0 }));
        const span = (axis: 0 | 1): number => Math.max(0, a[axis], b[axis]) - Math.min(0, a[axis], b[axis]);
        expect(feetOf(raceways)).toBeCloseTo(span(0) + span(1), 6);
        expect(cost).toBeCloseTo(span(0) + span(1), 6);
        expect(bound).toBeLessThanOrEqual(cost + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('with conductors alone to pay for, every branch goes straight along the lot and square to it', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), (boxes) => {
        const site = boxesOnly(boxes);
        const { raceways } = proposeRaceways(site, makeOf({ raceway: 0, conductor: 1, conduit: 0 }));
        const { runs } = runsOf(drawn(site, raceways));
        runs.forEach(({ length }, i) => {
          // A box within a tap of the panel has its run without a raceway only along one that is there.
          const [x, y] = boxes[i]!;
          if (length !== null) expect(length).toBeLessThanOrEqual(Math.abs(x) + Math.abs(y) + 1e-6);
          else expect(Math.abs(x) + Math.abs(y)).toBe(0);
        });
      }),
      { numRuns: 40 },
    );
  });
});

test('a lot that is turned by quarters, mirrored, or whose drops come in another order costs the same, also from a short search', () => {
  const lots = fc
    .uniqueArray(place, { minLength: 2, maxLength: 8, selector: String })
    .chain((boxes) => fc.tuple(fc.constant(boxes), fc.shuffledSubarray(boxes, { minLength: boxes.length })));
  const moved = fc.record({ quarters: fc.nat({ max: 3 }), isMirrored: fc.boolean() });
  const make = { ...makeOf({}), share: 0.01 };
  fc.assert(
    fc.property(lots, moved, ([boxes, again], { quarters, isMirrored }) => {
      const turn = ([x, y]: readonly [number, number]): readonly [number, number] => [-y, x];
      const other = again.map(([x, y]) =>
        Array.from({ length: quarters }).reduce(turn, [isMirrored ? -x : x, y] as const),
      );
      const [one, two] = [boxes, other].map((at) => proposeRaceways(boxesOnly(at), make));
      expect(two!.cost / one!.cost).toBeCloseTo(1, 9);
      expect(two!.bound / one!.bound).toBeCloseTo(1, 9);
    }),
    { numRuns: 25 },
  );
});

const bare = (file: SiteFile, rest: Partial<SiteFile> = {}): Site =>
  read({ ...file, raceways: [], pullpoints: [], ...rest });

test('every charger of the library lot gets its run, within half a hundredth of what its drawn raceways come to', () => {
  const site = bare(libraryLot());
  const { raceways, cost, bound, without } = proposeRaceways(site, makeOf({}));
  expect(without).toEqual([]);
  const proposed = runsOf(drawn(site, raceways)).runs;
  expect(proposed.every(({ ok }) => ok)).toBe(true);
  const feet = (runs: typeof proposed): number => runs.reduce((sum, { length }) => sum + length!, 0);
  expect(feet(proposed)).toBeLessThanOrEqual(feet(runsOf(toSite(libraryLot())).runs) * 1.005);
  expect(bound).toBeLessThanOrEqual(cost);
  expect(bound).toBeGreaterThan(0.9 * cost);
});

test('raceways that are there are used as far as they go: what one drop lacks is a leg to it', () => {
  const file = libraryLot();
  const last = file.raceways!.find(({ path }) => path.some(([x, y]) => x === 79 && y !== 0))!;
  const site = read({ ...file, raceways: file.raceways!.filter(({ id }) => id !== last.id) });
  const lost = runsOf(site).runs.filter(({ length }) => length === null);
  expect(lost.length).toBeGreaterThan(0);
  const { raceways, without } = proposeRaceways(site, makeOf({}));
  expect(without).toEqual([]);
  expect(feetOf(raceways)).toBeLessThanOrEqual(feetOf([last]) + 1e-6);
  expect(runsOf(drawn(site, raceways)).runs.every(({ ok }) => ok)).toBe(true);
});

test('no raceway goes through a keep-out that blocks raceways, wherever it lies, and who is shut off is named', () => {
  const corner = fc.record({ x: fc.integer({ min: -4, max: 80 }), y: fc.integer({ min: -16, max: 16 }) });
  const size = fc.record({ w: fc.integer({ min: 1, max: 20 }), h: fc.integer({ min: 1, max: 12 }) });
  fc.assert(
    fc.property(corner, size, ({ x, y }, { w, h }) => {
      const outline = [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ] as [number, number][];
      const site = bare(libraryLot(), { keepouts: [{ id: 'K1', outline, blocks: ['raceway'] }] });
      const { raceways, without } = proposeRaceways(site, { ...makeOf({}), share: 0.1 });
      const after = drawn(site, raceways);
      const crossed = keepoutFindings(after).filter(({ about }) => about[0]!.startsWith('N'));
      expect(crossed).toEqual([]);
      const named = new Set(without.map(({ id }) => id));
      for (const { charger, ok } of runsOf(after).runs) expect(ok || named.has(charger)).toBe(true);
    }),
    { numRuns: 12 },
  );
});

/** A few drops of the hospital lot beyond a drive aisle from their panel, with some of its steel or none. */
const beyondAisle = (members: SiteFile['members']): Site => {
  const file = hospitalLot();
  return bare(file, {
    keepouts: [],
    members: members!,
    chargers: file.chargers!.filter(({ from }) => from === 'P3').filter((_, i) => i % 12 === 0),
  });
};

test('over a drive aisle a raceway rises to what must stay clear, where no steel is drawn and all is taken to be held', () => {
  const site = beyondAisle([]);
  const { raceways } = proposeRaceways(site, makeOf({}));
  const ground = { shared: sharedOf(site), stalls: site.stalls };
  expect(raceways.some(({ path }) => path.some(([, , z]) => z >= site.rules.clearHeight.aisle))).toBe(true);
  for (const [i, one] of raceways.entries()) expect(racewayHeadroom({ id: `N${i}`, ...one }, ground)).toEqual([]);
});

test('between canopies nothing hangs over an open aisle: the way goes through the ground', () => {
  const site = beyondAisle(hospitalLot().members!);
  const { raceways, inAir } = proposeRaceways(site, makeOf({}));
  expect(inAir).toEqual([]);
  expect(raceways.some(({ place }) => place === 'underground')).toBe(true);
  const aisles = site.aisles.filter(({ kind = 'drive' }) => kind === 'drive').map(outlineOf);
  for (const { path, place } of raceways)
    if (place === 'overhead')
      path.slice(1).forEach(([x, y], i) => {
        const [a, b] = path[i]!;
        for (const t of [0.25, 0.5, 0.75])
          expect(aisles.some((one) => insideOf(one, a + (x - a) * t, b + (y - b) * t))).toBe(false);
      });
});

test('a branch goes its shortest way where the cheapest would be over its limit, and is named where none is short enough', () => {
  // By the cheapest tree the last box is reached round the others, 120 ft; it lies 60 ft away.
  const file = boxesOnly([
    [0, 50],
    [20, 50],
    [40, 50],
    [40, 20],
  ]);
  const limited = (limit: number): Site => ({ ...file, rules: { ...file.rules, branchLimit: limit } });
  const cheap = makeOf({ raceway: 50, conductor: 0.1, conduit: 0.1 });
  const free = runsOf(drawn(file, proposeRaceways(file, cheap).raceways)).runs;
  expect(free.at(-1)!.length).toBeCloseTo(120, 6);
  const just = limited(100 + file.rules.allowance.equipment + file.rules.allowance.box);
  const { raceways, without } = proposeRaceways(just, cheap);
  expect(without).toEqual([]);
  expect(runsOf(drawn(just, raceways)).runs.every(({ ok }) => ok)).toBe(true);
  const tight = proposeRaceways(limited(80), cheap);
  expect(tight.without.map(({ id }) => id)).toEqual(['EV2']);
  expect(tight.without[0]!.says).toMatch(/over its limit; equipment nearer by would do/);
});
