import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { partsOfRow } from '../../../calc/takeoff/bid/cost-parts.ts';
import { aloftAlong, aloftAt } from '../../../calc/takeoff/high.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';

const HEIGHTS = { ladder: 7, lift: 12 };

describe('how much of a path is worked off the ground, and from a lift', () => {
  test('is its feet over either height', () => {
    // Up from 2 ft to 14 ft and 60 ft along: over 7 ft 7 + 60, over 12 ft 2 + 60.
    const path: Point3[] = [
      [0, 0, 2],
      [0, 0, 14],
      [60, 0, 14],
    ];
    expect(aloftAlong(path, 'overhead', HEIGHTS)).toEqual({ high: 67, lift: 62 });
    expect(aloftAlong(path, 'overhead', { ladder: 8, lift: 14 })).toEqual({ high: 66, lift: 0 });
    expect(aloftAlong(path, 'underground', HEIGHTS)).toEqual({ high: 0, lift: 0 });
  });
  test('a lift that is fetched before a ladder is does for both', () => {
    const up: Point3[] = [
      [0, 0, 0],
      [0, 0, 10],
    ];
    expect(aloftAlong(up, 'surface', { ladder: 9, lift: 4 })).toEqual({ high: 6, lift: 6 });
    expect(aloftAt(5, { ladder: 9, lift: 4 })).toEqual({ high: 1, lift: 1 });
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

/** A drop at 10 ft and one at 14 on raceways of their own. */
const two: SiteFile = {
  ...at(10),
  raceways: [10, 14].map((z) => ({
    id: `R${z}`,
    path: [
      [0, z, z],
      [100, z, z],
    ],
    method: 'EMT',
    place: 'overhead',
  })),
  equipment: [panel('P1', [0, 12, 12])],
  drops: [10, 14].map((z) => ({ id: `D${z}`, box: [100, z, z], cord: 20 })),
  chargers: [10, 14].map((z) => charger(`C${z}`, `D${z}`, 'P1')),
};

describe('each thing by the height at which it is drawn', () => {
  const { cost } = alternativeOf('two', toSite(two), INVENTED_LIST);
  test('one cord of two is hung from a lift, and takes its hours by that', () => {
    const cord = cost.rows.find(({ item }) => item === 'cord')!;
    expect([cord.quantity, cord.ladder, cord.lift]).toEqual([2, 1, 1]);
    const [low, high] = partsOfRow(cord);
    expect([low!.of, high!.of]).toEqual(['C10', 'C14']);
    // 1.25 of a lift to 1.15 of a ladder: the rates of the list.
    expect(high!.hours / low!.hours).toBeCloseTo(1.25 / 1.15, 12);
    expect(low!.hours + high!.hours).toBeCloseTo(cord.hours, 12);
    expect(Math.round(100 * (low!.labor + high!.labor))).toBe(Math.round(100 * cord.labor));
    expect(low!.material).toBe(high!.material);
  });
  test('a site says from which heights on: with a lift from 15 ft there is none', () => {
    const rules = { workHeight: { lift: 15 } };
    const { cost: none } = alternativeOf('two', toSite({ ...two, rules }), INVENTED_LIST);
    expect(none.liftHours).toBe(0);
    expect(cost.liftHours).toBeGreaterThan(0);
    const { cost: low } = alternativeOf(
      'two',
      toSite({ ...two, rules: { workHeight: { ladder: 20, lift: 20 } } }),
      INVENTED_LIST,
    );
    expect(low.heightHours).toBe(0);
  });
});
