import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Drop, Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';
import { SMALL_LOT } from '../checks/faults/small-lot.ts';

/** Pedestals at some distances from a panel, each fed by a riser out of one trench 24 in. deep along y = 0. */
function pedestals(at: readonly number[], parts: Partial<SiteFile> = {}, more: Partial<Raceway> = {}): SiteFile {
  const far = Math.max(...at);
  const buried = (id: string, path: Point3[]): Raceway => ({
    id,
    path: path as unknown as Raceway['path'],
    method: 'PVC40',
    place: 'underground',
    ...more,
  });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'pedestals',
    equipment: [panel('P1', [0, 0, 4])],
    raceways: [
      buried('U1', [
        [0, 0, 2],
        [0, 0, -2],
        [far, 0, -2],
      ]),
      ...at.map((x, i) =>
        buried(`S${i + 1}`, [
          [x, 0, -2],
          [x, 0, 2],
        ]),
      ),
    ],
    drops: at.map((x, i): Drop => ({ id: `D${i + 1}`, box: [x, 0, 3], cord: 20, mount: 'pedestal' })),
    chargers: at.map((_, i) => charger(`C${i + 1}`, `D${i + 1}`, 'P1')),
    ...parts,
  };
}

const planned = (file: SiteFile): Plan => plan(toSite(file));
const count = ({ takeoff }: Plan, item: string): number =>
  takeoff.filter((row) => row.item === item).reduce((sum, { quantity }) => sum + quantity, 0);

describe('a pedestal 50 ft out', () => {
  const one = planned(pedestals([50]));

  test('brings its box, its cover and its cord with it, and is counted once', () => {
    expect(count(one, 'pedestal')).toBe(1);
    expect(count(one, 'bollard')).toBe(2);
    for (const item of ['junction box', 'cover', 'cord', 'retractor']) expect(count(one, item)).toBe(0);
    expect(count(one, 'charging module')).toBe(1);
  });

  test('has a second cord counted where a second charger hangs from it', () => {
    const two = planned(
      pedestals([50], {
        drops: [{ id: 'D1', box: [50, 0, 3], cord: 20, mount: 'pedestal', holds: 2 }],
        chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D1', 'P1')],
      }),
    );
    expect(count(two, 'pedestal')).toBe(1);
    expect(count(two, 'cord')).toBe(1);
    expect(count(two, 'junction box')).toBe(0);
  });

  test('without a charger is a pedestal still, and no box beside it', () => {
    const idle = planned(pedestals([50], { chargers: [] }));
    expect(count(idle, 'pedestal')).toBe(1);
    expect(count(idle, 'junction box')).toBe(0);
  });

  test('has its conductors measured as ever: 2 + 4 + 50 + 4 + 1 ft of run, 6 of allowance, 5% waste', () => {
    expect(count(one, 'conductor')).toBeCloseTo(2 * 67 * 1.05, 9);
  });

  test('has no hour by the height factor: all of it is on or in the ground', () => {
    for (const { item, high } of one.takeoff) expect([item, high]).toEqual([item, 0]);
    const twice = { ...INVENTED_LIST, rates: { ...INVENTED_LIST.rates, height: 2 } };
    expect(costOf(one.takeoff, twice, 1).hours).toBeCloseTo(costOf(one.takeoff, INVENTED_LIST, 1).hours, 9);
  });

  test('beside a drop overhead, whose work is high by where it lies', () => {
    const above = planned(
      pedestals([50], {
        raceways: [
          {
            id: 'R1',
            path: [
              [0, 0, 4],
              [0, 0, 10],
              [50, 0, 10],
            ],
            method: 'EMT',
            place: 'overhead',
          },
        ],
        drops: [{ id: 'D1', box: [50, 0, 10], retractor: [50, 0, 9], cord: 20 }],
      }),
    );
    const high = (item: string): number =>
      above.takeoff.filter((row) => row.item === item).reduce((sum, row) => sum + row.high, 0);
    // 3 ft of the riser are over 7 ft, and the 50 ft; a foot of allowance at the box; 5% waste. Two lines.
    expect(high('conductor')).toBeCloseTo(2 * 54 * 1.05, 9);
    expect(high('raceway')).toBeCloseTo(53 * 1.05, 9);
    expect(count(above, 'raceway')).toBeCloseTo(56 * 1.05, 9);
    // The bend is up at 10 ft, one of the two connectors at the panel.
    expect([high('field bend'), high('connector'), high('breaker')]).toEqual([1, 1, 0]);
    for (const item of ['junction box', 'cover', 'retractor', 'cord', 'charging module']) expect(high(item)).toBe(1);
  });
});

describe('core drills', () => {
  test('are one for each conduit that comes up through paving: at the panel and at the pedestal', () => {
    expect(count(planned(pedestals([50])), 'core drill')).toBe(2);
    const each = { rules: { circuitsPerConduit: 1 } };
    expect(count(planned(pedestals([50, 60, 70], each)), 'core drill')).toBe(6);
  });

  test('are none through soil', () => {
    expect(count(planned(pedestals([50, 60, 70], {}, { surface: 'soil' })), 'core drill')).toBe(0);
    expect(count(planned(pedestals([50], {}, { surface: 'concrete' })), 'core drill')).toBe(2);
  });

  test('of a feeder are one for each of its sets', () => {
    const fed = pedestals([50], {
      equipment: [panel('P1', [0, 0, 4]), { ...panel('SVC', [-40, 0, 0]), kind: 'source' }],
      feeders: [
        {
          id: 'F1',
          from: 'SVC',
          to: 'P1',
          conductor: { size: '1/0', metal: 'copper', sets: 2, insulation: 'THWN-2' },
          breakerAmps: 300,
        },
      ],
    });
    const way: Raceway = {
      id: 'U9',
      path: [
        [-40, 0, 1],
        [-40, 0, -3],
        [0, 2, -3],
        [0, 2, 4],
      ],
      method: 'PVC40',
      place: 'underground',
    };
    const drills = (surface: 'asphalt' | 'soil'): number | undefined =>
      planned({ ...fed, raceways: [...(fed.raceways ?? []), { ...way, surface }] })
        .takeoff.find(({ item }) => item === 'core drill')
        ?.parts.find(({ of }) => of === 'F1')?.quantity;
    expect(drills('asphalt')).toBe(4);
    expect(drills('soil')).toBeUndefined();
  });
});

test('bollards that are drawn by pedestals are taken off, each once; two where none is drawn', () => {
  const pedestal = (id: string, x: number) => ({
    ...SMALL_LOT.drops[0],
    id,
    mount: 'pedestal',
    box: [x, -1, 3],
    retractor: [x, -1, 3],
  });
  const post = (id: string, x: number, height: number) => ({ id, at: [x, 1], size: [0.5, 0.5], height });
  const count = (columns: readonly object[]): number =>
    plan(toSite({ ...SMALL_LOT, drops: [pedestal('D1', 9), pedestal('D2', 13)], columns } as unknown as SiteFile))
      .takeoff.filter(({ item }) => item === 'bollard')
      .reduce((sum, { quantity }) => sum + quantity, 0);
  expect(count([])).toBe(4);
  // One between both guards both; a column that carries something is none.
  expect(count([post('B1', 11, 3.5)])).toBe(1);
  expect(count([post('B1', 7, 3.5), post('B2', 8, 3)])).toBe(2 + 2);
  expect(count([post('B1', 11, 12)])).toBe(4);
});
