import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { jointsIn } from '../../../calc/takeoff/conduits/fittings.ts';
import { supports } from '../../../calc/takeoff/conduits/raceway-quantities.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { box, charger } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';
import { of, planOf, quantity } from './takeoff-parts.ts';

describe('a straight of raceway', () => {
  test('47 ft of EMT has 6 straps, 3 ft from each end and 10 ft apart at most (358.30)', () => {
    expect(supports(NEC_2023, 'EMT', '3/4', 47)).toBe(6);
  });

  test('47 ft in 10 ft sticks has 4 joints', () => {
    expect(jointsIn(47)).toBe(4);
  });

  test.each([
    [10, 0],
    [10.001, 1],
    [20, 1],
    [0.5, 0],
  ])('%f ft has %i joints', (feet, couplings) => {
    expect(jointsIn(feet)).toBe(couplings);
  });

  test('47 ft of 1/2 in. PVC is strapped every 3 ft (Table 352.30(B)): ceil(41 / 3) + 1', () => {
    expect(supports(NEC_2023, 'PVC40', '1/2', 47)).toBe(15);
  });

  test('no gap between straps is over the spacing and none from an end over 3 ft', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.1, max: 500, noNaN: true }), (feet) => {
        const count = supports(NEC_2023, 'EMT', '1', feet);
        expect((count - 1) * 10 + 6).toBeGreaterThanOrEqual(feet - 1e-6);
        if (count > 1) expect((count - 2) * 10 + 6).toBeLessThan(feet);
      }),
    );
  });
});

describe('a charger 50 ft out, its box 2 ft below the trunk', () => {
  const result = planOf(
    trunkLot([50], {
      drops: [{ ...box('D1', [50, 0, 8]), retractor: [50, 0, 7.5] }],
      chargers: [charger('C1', 'D1', 'P1', { pilot: true })],
      raceways: [
        {
          id: 'R1',
          path: [
            [0, 0, 10],
            [50, 0, 10],
          ],
          method: 'EMT',
          place: 'overhead',
        },
      ],
    }),
  );

  test('conductors: 52 ft of run, 5 at the panel, 1 at the box, and 5% waste', () => {
    expect(quantity(result, 'conductor', '8 AWG copper THWN-2, black')).toBeCloseTo(58 * 1.05, 9);
    expect(quantity(result, 'conductor', '8 AWG copper THWN-2, red')).toBeCloseTo(58 * 1.05, 9);
    expect(quantity(result, 'grounding conductor', '10 AWG copper THWN-2, green')).toBeCloseTo(58 * 1.05, 9);
    expect(quantity(result, 'pilot conductor', '14 AWG copper THWN-2, violet')).toBeCloseTo(58 * 1.05, 9);
  });

  test('raceway: 52 ft and 5% are 54.6 ft, six sticks with five couplings; 1/2 in. is bent, not bought as an elbow', () => {
    expect(quantity(result, 'raceway', 'EMT 1/2 in')).toBeCloseTo(54.6, 9);
    expect(quantity(result, 'raceway stick', 'EMT 1/2 in, 10 ft')).toBe(6);
    expect(of(result, 'elbow')).toEqual([]);
    expect(quantity(result, 'field bend', 'EMT 1/2 in')).toBe(1);
    expect(quantity(result, 'coupling', 'EMT 1/2 in')).toBe(5);
    expect(quantity(result, 'connector', 'EMT 1/2 in')).toBe(2);
    // ceil((52 - 6) / 10) + 1.
    expect(quantity(result, 'strap', 'EMT 1/2 in')).toBe(6);
  });

  test('one each of breaker, module, cord, retractor and box', () => {
    expect(quantity(result, 'breaker', '2-pole 40 A')).toBe(1);
    expect(quantity(result, 'charging module', '32 A 208 V single-phase')).toBe(1);
    for (const item of ['cord', 'retractor']) expect(of(result, item).map((row) => row.quantity)).toEqual([1]);
    // 4 x 3.00 + 2 x 2.00 + 2.50 in³ (314.16).
    expect(quantity(result, 'junction box', 'at the drop, 4 x 1-1/2 square, wet location')).toBe(1);
    expect(of(result, 'junction box')).toHaveLength(1);
  });

  test('every row says where it comes from and what it is made of', () => {
    for (const row of result.takeoff) {
      expect(row.basis).not.toBe('');
      expect(row.of.length).toBeGreaterThan(0);
    }
  });
});

test('a pull point that one conduit passes is a conduit body; where two do it is a box with a cover', () => {
  const passed = (taps: readonly number[]): Plan =>
    planOf(trunkLot(taps, { pullpoints: [{ id: 'PB1', at: [20, 0, 10] }], rules: { circuitsPerConduit: 1 } }));
  expect(of(passed([50]), 'conduit body').map(({ spec, quantity: n }) => [spec, n])).toEqual([
    ['EMT 1/2 in, wet location', 1],
  ]);
  expect(of(passed([50]), 'pull point')).toEqual([]);
  expect(of(passed([50, 60]), 'conduit body')).toEqual([]);
  expect(of(passed([50, 60]), 'pull point')).toHaveLength(1);
  // Boxes at two drops and the pull box.
  expect(of(passed([50, 60]), 'cover').reduce((sum, row) => sum + row.quantity, 0)).toBe(3);
});

test('the grounding conductor has a tail on both sides of each box that it ends in', () => {
  const result = planOf(trunkLot([50], { pullpoints: [{ id: 'PB1', at: [20, 0, 10] }] }));
  const [row] = of(result, 'grounding conductor');
  // 20 ft with 5 at the panel and 1 at the pull point; 30 ft with 1 there and 1 at the drop.
  expect(row!.parts.map(({ quantity: feet }) => feet)).toEqual([26, 32]);
});

test('a pull point that no circuit passes is counted all the same, as is the box of a drop without a circuit', () => {
  const result = planOf(
    trunkLot([50], {
      drops: [box('D1', [50, 0, 10]), box('D2', [50, 90, 10])],
      pullpoints: [{ id: 'PB1', at: [55, 0, 10] }],
    }),
  );
  expect(of(result, 'pull point').map(({ spec }) => spec)).toEqual(['no circuit passes']);
  expect(of(result, 'junction box').map(({ spec, of: ids }) => [spec.split(',')[1], ids])).toContainEqual([
    ' no circuit yet',
    ['D2'],
  ]);
});

test('conduits overhead hang, those on a surface do not; each charger has two labels', () => {
  const at = (place: 'overhead' | 'surface'): Plan =>
    planOf(
      trunkLot([50], {
        raceways: [
          {
            id: 'R1',
            path: [
              [0, 0, 10],
              [60, 0, 10],
            ],
            method: 'EMT',
            place,
          },
        ],
      }),
    );
  // ceil((50 - 6) / 10) + 1.
  for (const place of ['overhead', 'surface'] as const) expect(quantity(at(place), 'strap', 'EMT 1/2 in')).toBe(6);
  expect(quantity(at('overhead'), 'hanger', 'EMT 1/2 in')).toBe(6);
  expect(of(at('surface'), 'hanger')).toEqual([]);
  expect(quantity(at('surface'), 'label', 'circuit')).toBe(2);
});

test('underground raceway has no straps', () => {
  const raceways: SiteFile['raceways'] = [
    {
      id: 'R1',
      path: [
        [0, 0, 10],
        [50, 0, 10],
      ],
      method: 'PVC40',
      place: 'underground',
    },
  ];
  expect(of(planOf(trunkLot([50], { raceways })), 'strap')).toEqual([]);
});

test('colours follow the lines and the voltage: black, red, blue to 250 V; brown, orange, yellow above', () => {
  const colors = (volts: number): string[] =>
    of(
      planOf(
        trunkLot([20, 30, 40], { chargers: ['1', '2', '3'].map((n) => charger(`C${n}`, `D${n}`, 'P1', { volts })) }),
      ),
      'conductor',
    ).map(({ spec }) => spec.split(', ')[1]!);
  expect(colors(208).sort()).toEqual(['black', 'blue', 'red']);
  expect(colors(480).sort()).toEqual(['brown', 'orange', 'yellow']);
});

test('equipment that stands already is neither bought nor set on a pad', () => {
  const lot = anyLotWithBoard();
  const bought = (existing?: true): readonly string[] =>
    planOf({
      ...lot,
      equipment: lot.equipment!.map((one) => ({ ...one, ...(one.kind !== 'source' && existing && { existing }) })),
    }).takeoff.flatMap(({ item }) => (/^(switchboard|equipment pad)$/.test(item) ? [item] : []));
  expect(bought()).toEqual(['switchboard', 'equipment pad']);
  expect(bought(true)).toEqual([]);
});

const anyLotWithBoard = (): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'board',
  equipment: [
    {
      id: 'SB',
      kind: 'switchboard',
      at: [0, 0],
      size: [4, 2, 7],
      entry: [0, 0, 7],
      volts: 208,
      phases: 3,
      busAmps: 800,
    },
  ],
});
