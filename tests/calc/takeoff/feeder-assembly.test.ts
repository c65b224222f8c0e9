import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { writePlan } from '../../../calc/plan/write-plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { settingOutSchedule } from '../../../calc/sheets/pdf/schedules/setting-out-schedule.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { panel } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';

const items = ({ takeoff }: Plan, item: string): [string, number][] =>
  takeoff.filter((row) => row.item === item).map(({ spec, quantity }) => [spec, Number(quantity.toFixed(6))]);

type Feeder = NonNullable<SiteFile['feeders']>[number];

/** A board fed in the ground: down 5 ft, 80 ft along, up 5 ft; or as the raceway says. */
function fed(raceway: Partial<Raceway> = {}, feeder: Partial<Feeder> = {}, more: Partial<SiteFile> = {}): SiteFile {
  return trunkLot([20], {
    equipment: [panel('SB', [-80, 60, 3]), panel('P1', [0, 60, 3])],
    raceways: [
      {
        id: 'R1',
        path: [
          [0, 60, 10],
          [20, 60, 10],
        ] as [Point3, Point3],
        method: 'EMT',
        place: 'overhead',
      },
      {
        id: 'U1',
        path: [
          [-80, 60, 3],
          [-80, 60, -2],
          [0, 60, -2],
          [0, 60, 3],
        ],
        method: 'PVC40',
        place: 'underground',
        ...raceway,
      },
    ],
    feeders: [
      {
        id: 'F1',
        from: 'SB',
        to: 'P1',
        conductor: { size: '3/0', metal: 'copper', sets: 2, insulation: 'THWN-2' },
        breakerAmps: 400,
        ...feeder,
      },
    ],
    drops: [],
    chargers: [],
    ...more,
  });
}
const planOf = (...parts: Parameters<typeof fed>): Plan => plan(toSite(fed(...parts)));

describe('a feeder of two sets in the ground, 90 ft long', () => {
  const result = planOf();

  test('has its conductors cut whole: four of each set, 90 ft and 5 at both ends', () => {
    const [row] = result.takeoff.filter(({ item }) => item === 'feeder conductor');
    expect(row).toMatchObject({ spec: '3/0 AWG copper THWN-2' });
    expect(row!.parts).toEqual([{ of: 'F1', quantity: 800, cut: Array(8).fill(100) }]);
  });

  test('has both ends of each of its ten conductors made up, and no lugs bought for boards', () => {
    // 400 A: grounding conductor of 3 AWG (250.122).
    expect(items(result, 'termination')).toEqual([
      ['3 AWG copper', 2 * 2],
      ['3/0 AWG copper', 2 * 8],
    ]);
    expect(items(result, 'lug')).toEqual([]);
  });

  test('has two elbows a set, a coupling at each, and sticks that come belled', () => {
    expect(items(result, 'elbow')).toEqual([['PVC40 2 in, 90 degrees', 4]]);
    expect(items(result, 'coupling').filter(([spec]) => spec.startsWith('PVC'))).toEqual([['PVC40 2 in', 4]]);
    const [row] = result.takeoff.filter(({ item }) => item === 'feeder raceway');
    expect(row!.parts).toEqual([{ of: 'F1', quantity: 180, cut: [5, 80, 5, 5, 80, 5] }]);
  });

  test('has a connector and a bushing at both ends of each set, no strap in the ground, and is tested', () => {
    expect(items(result, 'connector').filter(([spec]) => spec.startsWith('PVC'))).toEqual([['PVC40 2 in', 4]]);
    expect(items(result, 'bushing')).toEqual([['insulating, 2 in', 4]]);
    expect(items(result, 'strap').filter(([spec]) => spec.startsWith('PVC'))).toEqual([]);
    expect(items(result, 'test')).toEqual([['feeder, insulation resistance', 2]]);
  });
});

test('a feeder of one set hung overhead in 2 in. EMT has hangers, straps, couplings, and no bushings', () => {
  const over: Point3[] = [
    [-80, 60, 3],
    [-80, 60, 10],
    [0, 60, 10],
    [0, 60, 3],
  ];
  const one = { size: '3/0', metal: 'copper', sets: 1, insulation: 'THWN-2' } as const;
  const raceway = { path: over as unknown as Raceway['path'], method: 'EMT', place: 'overhead' } as const;
  const result = planOf(raceway, { conductor: one, breakerAmps: 200 });
  const of2 = (item: string): number => items(result, item).find(([spec]) => spec.startsWith('EMT 2 in'))?.[1] ?? 0;
  // 80 ft overhead between corners: half of 10 ft from each, 5, 15, ... 75: 8; of 14 ft upright: ceil((14 - 6) / 10) + 1 = 2.
  expect([of2('hanger'), of2('strap')]).toEqual([8, 8 + 2]);
  // Seven in the 80 ft, two at each elbow; the 7 ft legs are one stick each.
  expect([of2('elbow'), of2('coupling'), of2('connector')]).toEqual([2, 7 + 4, 2]);
  expect(items(result, 'bushing')).toEqual([]);
  // Of 94 ft, 80 and 3 ft of each leg are over 7 ft.
  const [row] = result.takeoff.filter(({ item }) => item === 'feeder raceway');
  expect(row!.high / row!.quantity).toBeCloseTo(86 / 94, 9);
});

test('two sets side by side overhead hang from trapezes', () => {
  const path = [
    [-80, 60, 3],
    [-80, 60, 10],
    [0, 60, 10],
    [0, 60, 3],
  ] as const;
  const result = planOf({ path, method: 'EMT', place: 'overhead' } as unknown as Partial<Raceway>);
  // Two of 2.197 in. outside, 1 in. between and 1-1/2 to each rod: 8.4 in., cut to 12.
  expect(items(result, 'trapeze')).toEqual([['12 in', 8]]);
  expect(items(result, 'hanger').filter(([spec]) => spec.startsWith('EMT 2'))).toEqual([]);
});

test('90 ft of plastic on a wall has straps and expansion fittings of each set', () => {
  const result = planOf({ place: 'surface', method: 'PVC80' }, {});
  const size = items(result, 'strap').find(([spec]) => spec.startsWith('PVC80'))!;
  // 2-1/2 in. PVC is held every 6 ft (Table 352.30(B)): ceil((90 - 6) / 6) + 1 = 15 a set.
  expect(size).toEqual(['PVC80 2-1/2 in', 2 * 15]);
  // 80 ft over 101 F: 80 x 12 x 3.38e-5 x 100.8 = 3.27 in., one a set; 5 ft move 0.2 in. and need none.
  expect(items(result, 'expansion fitting').map(([, count]) => count)).toEqual([2]);
});

test('at a transformer the lugs are bought: one of each conductor', () => {
  const equipment = [
    panel('SB', [-80, 60, 3], { volts: 480 }),
    panel('P1', [0, 60, 3], { kind: 'transformer', primaryVolts: 480, secondaryVolts: 208, kva: 150 }),
  ];
  const result = planOf({}, {}, { equipment });
  // Three lines to a delta and a grounding conductor, two sets.
  expect(items(result, 'lug')).toEqual([
    ['3 AWG copper', 2],
    ['3/0 AWG copper', 6],
  ]);
});

describe('a pull point on the way of a feeder', () => {
  const pulled = (at: Point3, raceway: Partial<Raceway> = {}): Plan =>
    planOf(raceway, {}, { pullpoints: [{ id: 'PB1', at }] });

  test('in the ground is a handhole long enough for a straight pull of its size: 8 x 2 in.', () => {
    const result = pulled([-40, 60, -2]);
    expect(items(result, 'handhole')).toEqual([['13 x 24 in, Tier 22', 1]]);
    expect(items(result, 'pull point')).toEqual([]);
    // Each set has two ends more.
    expect(items(result, 'connector').filter(([spec]) => spec.startsWith('PVC'))).toEqual([['PVC40 2 in', 8]]);
  });

  test('is among the boxes and handholes of the plan, by its own name, and in the setting-out schedule', () => {
    const result = pulled([-40, 60, -2]);
    expect(result.boxes).toMatchObject([
      { id: 'PB1', kind: 'pullpoint', conduits: ['F1'], length: 16, under: 'asphalt' },
    ]);
    expect(result.handholes).toMatchObject([{ id: 'PB1', size: '13 x 24 in', rating: 'Tier 22' }]);
    const site = toSite(fed({}, {}, { pullpoints: [{ id: 'PB1', at: [-40, 60, -2] }] }));
    const row = settingOutSchedule({ site, plan: result }).rows.find(([mark]) => mark === 'PB1')!;
    expect(row[1]).toBe('handhole, its conduits');
    expect(row[6]).toBe('13 x 24 in, Tier 22');
    // Told of like any other in the ground.
    expect(result.findings.some(({ rule, about }) => rule === 'buried-box' && about.includes('PB1'))).toBe(true);
    expect(writePlan(result, site).handholes).toEqual(result.handholes);
  });

  test('that circuits pass too has a box of the feeders beside theirs', () => {
    const both = planOf(
      {},
      {},
      {
        pullpoints: [{ id: 'PB1', at: [-40, 60, -2] }],
        drops: [{ id: 'D1', box: [0, 61, 3], cord: 20 }],
        chargers: [{ id: 'C1', drop: 'D1', stalls: [], from: 'SB', amps: 32, volts: 208, phases: 1 }],
      },
    );
    expect(both.boxes.map(({ id }) => id).sort()).toEqual(['D1', 'PB1', 'PB1.F']);
    expect(both.handholes.map(({ id }) => id).sort()).toEqual(['PB1', 'PB1.F']);
    const rows = both.takeoff.filter(({ item }) => item === 'handhole');
    expect(rows.flatMap(({ of }) => of).sort()).toEqual(['PB1', 'PB1.F']);
  });

  test('on a wall is a pull box of 16 in. with its cover', () => {
    const result = pulled([-40, 60, 3], {
      path: [
        [-80, 60, 3],
        [0, 60, 3],
      ],
      method: 'EMT',
      place: 'surface',
    });
    expect(items(result, 'pull point')).toEqual([['pull box 16 in long, wet location', 1]]);
    expect(items(result, 'cover')).toEqual([['pull box 16 in long, wet location', 1]]);
  });
});

test('a feeder of which the length alone is given turns once at each end, and is held all along if it is steel', () => {
  const result = planOf({}, { length: 100, raceway: 'RMC' });
  expect(items(result, 'elbow')).toEqual([['RMC 2 in, 90 degrees', 4]]);
  // ceil((100 - 6) / 10) + 1 a set.
  expect(items(result, 'strap').find(([spec]) => spec.startsWith('RMC'))).toEqual(['RMC 2 in', 2 * 11]);
});

test('an existing feeder has none of it', () => {
  const result = planOf({}, { existing: true });
  for (const item of ['termination', 'elbow', 'bushing', 'test', 'feeder raceway', 'feeder conductor'])
    expect(items(result, item)).toEqual([]);
});

test('all of it has a price', () => {
  for (const method of ['PVC40', 'EMT', 'RMC', 'PVC80'] as const) {
    const { takeoff } = planOf({ method, place: 'surface' });
    expect(costOf(takeoff, INVENTED_LIST, 1).missing).toEqual([]);
  }
});
