import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { liftShares } from '../../../calc/takeoff/lift-share.ts';
import type { Drop, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';

const raceway = (id: string, path: Raceway['path'], place: Raceway['place'] = 'overhead'): Raceway => ({
  id,
  path,
  method: 'EMT',
  place,
});
const drop = (id: string, z: number): Drop => ({ id, box: [0, 0, z], cord: 20 });

describe('how much of what is high is worked from a lift', () => {
  test('goes by the feet and the boxes that are drawn over 12 ft', () => {
    // Up from 2 ft to 14 ft and 60 ft along: over 7 ft 7 + 60, over 12 ft 2 + 60; 33 ft at 10 ft.
    const paths = [
      raceway('R1', [
        [0, 0, 2],
        [0, 0, 14],
        [60, 0, 14],
      ]),
      raceway('R2', [
        [0, 9, 10],
        [33, 9, 10],
      ]),
      raceway(
        'R3',
        [
          [0, 20, -2],
          [500, 20, -2],
        ],
        'underground',
      ),
    ];
    const { along, atDrops } = liftShares(paths, [drop('D1', 13), drop('D2', 10), drop('D3', 10), drop('D4', 4)]);
    expect(along).toBeCloseTo(62 / 100, 12);
    expect(atDrops).toBeCloseTo(1 / 3, 12);
  });
  test('is nothing where nothing is high', () => {
    expect(liftShares([], [drop('D1', 4)])).toEqual({ along: 0, atDrops: 0 });
  });
});

const at = (z: number): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'one',
  equipment: [panel('P1', [0, 0, 5])],
  raceways: [
    {
      id: 'R1',
      path: [
        [0, 0, z],
        [100, 0, z],
      ],
      method: 'EMT',
      place: 'overhead',
    },
  ],
  drops: [{ id: 'D1', box: [100, 0, z], cord: 20 }],
  chargers: [charger('C1', 'D1', 'P1')],
});
const priced = (z: number) =>
  alternativeOf('one', toSite({ ...at(z), equipment: [panel('P1', [0, 0, z])] }), INVENTED_LIST).cost;

test('the same work takes more at each band: grade, ladder, lift; and a lift is there for its days', () => {
  const [grade, ladder, lift] = [6, 10, 14].map(priced) as [
    ReturnType<typeof priced>,
    ReturnType<typeof priced>,
    ReturnType<typeof priced>,
  ];
  expect(grade.heightHours).toBe(0);
  expect(ladder.heightHours).toBeGreaterThan(0);
  // 25% on what was 15%.
  expect(lift.heightHours / ladder.heightHours).toBeCloseTo(0.25 / 0.15, 2);
  const rental = ({ additions }: typeof lift) => additions.find(({ name }) => name === 'lift rental')!.dollars;
  expect([rental(grade), rental(ladder)]).toEqual([0, 0]);
  expect(rental(lift)).toBe(190 * Math.ceil(lift.liftHours / 16));
});
