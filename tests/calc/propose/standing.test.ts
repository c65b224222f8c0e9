import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { bidOfRows } from '../../../calc/propose/bid-worth.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { racewaysPart } from '../../../calc/propose/raceways/raceways-part.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const Z = 11;
/** From the panel round by 156 ft to a place that is 110 ft off straight on. */
const TRUNK: Raceway = {
  id: 'T1',
  path: [
    [0, 0, Z],
    [24, 0, Z],
    [24, 110, Z],
    [2, 110, Z],
  ],
  method: 'EMT',
  place: 'overhead',
};

/** Boxes on the trunk, so many of them, and two that nothing leads to beyond its end. */
function lot(standing: number, raceways: readonly Raceway[] = [TRUNK]): SiteFile {
  const boxes: readonly Point3[] = [
    ...Array.from({ length: standing }, (_, i): Point3 => [3 + i, 110, Z]),
    [0, 114, Z],
    [0, 116, Z],
  ];
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'a trunk that stands',
    equipment: [
      {
        id: 'P1',
        kind: 'panelboard',
        at: [0, 0],
        size: [3, 1, 6],
        entry: [0, 0, Z],
        volts: 208,
        phases: 3,
        busAmps: 800,
        mainAmps: 800,
        spaces: 84,
      },
    ],
    drops: boxes.map((box, i) => ({ id: `D${i}`, box, cord: 25 })),
    chargers: boxes.map((_, i) => ({
      id: `EV${i}`,
      drop: `D${i}`,
      stalls: [],
      from: 'P1',
      amps: 32,
      volts: 208,
      phases: 1,
    })),
    raceways,
    rules: { tapLimit: 0.3 },
  };
}

const feet = ({ raceways = [] }: SiteFile): number =>
  raceways
    .filter(({ id }) => id !== 'T1')
    .flatMap(({ path }) =>
      path.slice(1).map((to, i) => Math.hypot(to[0] - path[i]![0], to[1] - path[i]![1], to[2] - path[i]![2])),
    )
    .reduce((sum, one) => sum + one, 0);
const dollars = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;
const proposed = (file: SiteFile, answers?: number): SiteFile =>
  propose(file, { what: 'raceways', cordsADrop: 1, prices: INVENTED_LIST, ...(answers !== undefined && { answers }) })
    .file;

test('by feet, conduits that stand with room for two more circuits take them, though a new raceway would be shorter', () => {
  const file = proposed(lot(1), 0);
  // From the end of the trunk to the boxes, and nothing beside it.
  expect(feet(file)).toBeLessThan(9);
  const { runs, conduits } = plan(toSite(file));
  expect(runs.every(({ ok, raceways }) => ok && raceways.includes('T1'))).toBe(true);
  // Three circuits to a conduit: rule `circuitsPerConduit`.
  expect(Math.max(...conduits.map(({ circuits }) => circuits.length))).toBe(3);
  const straight: Raceway = {
    id: 'N1',
    path: [
      [0, 0, Z],
      [0, 116, Z],
    ],
    method: 'EMT',
    place: 'overhead',
  };
  expect(dollars(file)).toBeLessThan(dollars(lot(1, [TRUNK, straight])));
});

test.each([1, 4])(
  'with %i circuits in what stands the proposal is no dearer than filling that, nor than a new raceway straight to the boxes',
  (standing) => {
    const straight: Raceway = {
      id: 'N1',
      path: [
        [0, 0, Z],
        [0, 116, Z],
      ],
      method: 'EMT',
      place: 'overhead',
    };
    const bid = (file: SiteFile): number => bidOfRows(plan(toSite(file)).takeoff, INVENTED_LIST);
    const filled = racewaysPart(lot(standing), INVENTED_LIST, () => {}).file;
    expect(feet(filled)).toBeLessThan(9);
    for (const answers of [0, undefined]) {
      const found = bid(proposed(lot(standing), answers));
      expect(found).toBeLessThanOrEqual(bid(lot(standing, [TRUNK, straight])) + 0.005);
      if (answers === undefined) expect(found).toBeLessThan(0.99 * bid(filled));
    }
  },
);

test.each([3, 6])('where %i circuits fill what stands, the shorter way is new', (standing) => {
  expect(feet(proposed(lot(standing), 0))).toBeGreaterThan(100);
});
