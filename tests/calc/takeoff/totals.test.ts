import { expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { comparison } from '../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { keyFigures } from '../../../calc/sheets/pdf/cover/key-figures.ts';
import { SUMMED_LENGTHS, summedLength } from '../../../calc/takeoff/totals.ts';
import { printTotal } from '../../../routing/site/numbers/feet-inches.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';

/** One circuit with a pilot in 100 ft of conduit, and 50 ft of new feeder with four lines and a ground. */
const FILE: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'one of each',
  equipment: [
    { id: 'SVC', kind: 'source', at: [-40, 0], size: [4, 4, 5], entry: [-40, 0, 0], volts: 208, phases: 3 },
    panel('P1', [0, 0, 10]),
  ],
  feeders: [
    {
      id: 'F1',
      from: 'SVC',
      to: 'P1',
      conductor: { size: '1', metal: 'copper', sets: 1, insulation: 'THWN-2' },
      raceway: 'PVC40',
      length: 50,
      breakerAmps: 100,
    },
  ],
  raceways: [
    {
      id: 'R1',
      path: [
        [0, 0, 10],
        [100, 0, 10],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  drops: [{ id: 'D1', box: [100, 0, 10], cord: 20 }],
  chargers: [charger('C1', 'D1', 'P1', { pilot: true })],
};

const site = toSite(FILE);
const one = alternativeOf('one', site, INVENTED_LIST);

test('a summed length says which conductors it counts, and has their waste in', () => {
  // Two lines, the ground and the pilot: 4 x (100 + 5 + 1) ft, and 5%.
  expect(summedLength(one.plan.takeoff, SUMMED_LENGTHS.branchConductors)).toBeCloseTo(4 * 106 * 1.05, 9);
  // Three lines, the neutral and the ground: 5 x (50 + 2 x 5) ft, and 5%.
  expect(summedLength(one.plan.takeoff, SUMMED_LENGTHS.feederConductors)).toBeCloseTo(5 * 60 * 1.05, 9);
  expect(summedLength(one.plan.takeoff, SUMMED_LENGTHS.branchRaceway)).toBeCloseTo(105, 9);
});

test('the comparison and the cover give the same figure by the same name, in whole feet', () => {
  const facts = comparison([one, one]);
  const figure = facts.find(({ fact }) => fact === 'branch conductors with waste')!;
  expect(figure.values[0]).toBeCloseTo(445.2, 9);
  expect(figure.isTotal).toBe(true);
  expect(facts.some(({ fact }) => fact === 'conductor')).toBe(false);
  const cover = keyFigures(site, one.plan, 200).rows.find(([what]) => String(what).startsWith('Branch conductors'));
  expect(cover?.[1]).toBe('445 ft');
});

test.each([
  [12_364.27, 'ft', '12,364 ft'],
  [0, 'ft', '0 ft'],
  [0.4, 'ft', '0.4 ft'],
  [1000, 'm', '304.8 m'],
  [Number.NaN, 'ft', '–'],
] as const)('%f ft in a file in %s is bought as %s', (feet, units, words) => {
  expect(printTotal(feet, units)).toBe(words);
});
