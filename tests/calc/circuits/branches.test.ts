import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Circuit } from '../../../calc/plan-file/branches.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';

const planOf = (file: SiteFile): Plan => plan(toSite(file));

/** The circuit of one charger on a trunk, alone in its conduit, `feet` from the panel. */
function alone(amps: number, feet: number, parts: Partial<SiteFile> = {}): Circuit {
  return planOf(trunkLot([feet], { chargers: [charger('C1', 'D1', 'P1', { amps })], ...parts })).circuits[0]!;
}

const sizes = (circuit: Circuit): unknown[] => [
  circuit.breakerAmps,
  circuit.conductor.size,
  circuit.grounding.size,
  circuit.sizedBy,
];

describe('breaker, conductor and grounding conductor (625.41, 310.16, 240.4, 250.122), 40 °C, alone in EMT', () => {
  // 10 AWG is 35 A at 75 °C, under 40; 8 AWG 50 A. 6 AWG 65 A; 4 AWG 85 A; 3 AWG 100 A.
  test.each([
    [16, [20, '12', '12', 'ampacity']],
    [32, [40, '8', '10', 'ampacity']],
    [40, [50, '8', '10', 'ampacity']],
    [48, [60, '6', '10', 'ampacity']],
    [64, [80, '4', '8', 'ampacity']],
    [80, [100, '3', '8', 'ampacity']],
  ])('%i A', (amps, expected) => {
    expect(sizes(alone(amps, 20))).toEqual(expected);
  });
});

test('three 80 A circuits in one conduit need a size more: 115 x 0.91 x 0.80 is 83.7 A, and 90 A is the next rating', () => {
  const chargers = ['1', '2', '3'].map((n) => charger(`C${n}`, `D${n}`, 'P1', { amps: 80 }));
  const { circuits } = planOf(trunkLot([30, 30, 30], { chargers }));
  // Where the three share, 2 AWG: 130 x 0.91 x 0.80 = 94.64 A, which 100 A may protect.
  for (const { currentCarrying, conductor } of circuits) expect(conductor.size).toBe(currentCarrying > 3 ? '2' : '3');
});

describe('voltage drop', () => {
  test('grows the conductor until the branch is within its limit, and the grounding conductor with it', () => {
    // 250 ft of conductor, steel: 2 x 250 x 32 x (R 0.99 + X 0.141) / 1000 is 12.5 V in 8 AWG, 7.9 in 6, 5.05 in 4 AWG,
    // 2.43% of 208 V (Chapter 9 Table 9). 250.122(B): 10380 x 41740 / 16510 = 26242 cmil, by a hair the 26240 of 6 AWG.
    const circuit = alone(32, 244);
    expect(sizes(circuit)).toEqual([40, '4', '6', 'voltage drop']);
    expect(circuit.branchDropPercent).toBeCloseTo(2.43, 2);
  });

  test('is that of one complex sum: |V| - |V - 2 I Z|, I lagging V', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 90 }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (feet, powerFactor) => {
          const circuit = alone(32, feet, { rules: { powerFactor } });
          expect(circuit.conductor.size).toBe('8');
          const angle = -Math.acos(powerFactor);
          const [r, x] = [(0.78 * (feet + 6)) / 1000, (0.065 * (feet + 6)) / 1000];
          const re = 208 - 2 * 32 * (r * Math.cos(angle) - x * Math.sin(angle));
          const im = -2 * 32 * (r * Math.sin(angle) + x * Math.cos(angle));
          expect(circuit.branchDropPercent).toBeCloseTo((100 * (208 - Math.hypot(re, im))) / 208, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('of a three-phase charger is sqrt 3 I Z', () => {
    const circuit = alone(32, 94, {
      chargers: [charger('C1', 'D1', 'P1', { phases: 3 })],
      rules: { powerFactor: 1 },
    });
    const drop = Math.sqrt(3) * 32;
    const expected = 208 - Math.hypot(208 - drop * 0.078, drop * 0.0065);
    expect(circuit.phases).toBe('ABC');
    expect(circuit.currentCarrying).toBe(3);
    expect(circuit.branchDropPercent).toBeCloseTo((100 * expected) / 208, 9);
  });

  test('takes each stretch by its own raceway, the allowances by those at the ends', () => {
    const raceways: SiteFile['raceways'] = [
      {
        id: 'R1',
        path: [
          [0, 0, 10],
          [40, 0, 10],
        ],
        method: 'EMT',
        place: 'overhead',
      },
      {
        id: 'R2',
        path: [
          [40, 0, 10],
          [90, 0, 10],
        ],
        method: 'PVC40',
        place: 'underground',
      },
    ];
    const circuit = alone(32, 90, { raceways, rules: { powerFactor: 1 } });
    // 8 AWG: 0.78 ohm per 1000 ft in both; reactance 0.065 in steel over 40 + 5 ft, 0.052 in PVC over 50 + 1 ft.
    const [r, x] = [(0.78 * 96) / 1000, (0.065 * 45 + 0.052 * 51) / 1000];
    const expected = 208 - Math.hypot(208 - 64 * r, 64 * x);
    expect(circuit.branchDropPercent).toBeCloseTo((100 * expected) / 208, 9);
  });

  test('past the largest conductor is a finding', () => {
    const { findings, circuits } = planOf(trunkLot([9000]));
    expect(circuits[0]!.conductor.size).toBe('1000');
    expect(findings.filter(({ rule }) => rule === 'branch-drop')).toHaveLength(1);
  });

  test('past the largest conductor is told by the charger’s own limit where it has one', () => {
    const own = { chargers: [charger('C1', 'D1', 'P1', { branchDrop: 1.25 })] };
    const [told] = planOf(trunkLot([9000], own)).findings.filter(({ rule }) => rule === 'branch-drop');
    expect(told).toMatchObject({ limit: 1.25, source: expect.stringContaining('own limit') });
    expect(told!.says).toContain('the limit is 1.25%');
  });

  test('of one of two chargers alike grows that one alone', () => {
    const two = (branchDrop?: number) =>
      planOf(
        trunkLot([150, 150], {
          chargers: ['1', '2'].map((n) =>
            charger(`C${n}`, `D${n}`, 'P1', n === '2' && branchDrop !== undefined ? { branchDrop } : {}),
          ),
        }),
      ).circuits;
    const [a, b] = two(1);
    expect([a!.conductor.size, b!.conductor.size]).not.toEqual(two().map(({ conductor }) => conductor.size));
    expect(a!.conductor.size).toBe(two()[0]!.conductor.size);
    expect(b!.branchDropPercent).toBeLessThanOrEqual(1);
    expect(a!.branchDropPercent).toBeGreaterThan(1);
  });

  test('is monotone in the limit: a stricter limit never takes a smaller conductor', () => {
    const sizeAt = (branch: number): number => {
      const { conductor } = alone(32, 200, { rules: { dropLimit: { branch } } });
      return ['8', '6', '4', '3', '2', '1', '1/0', '2/0', '3/0', '4/0', '250'].indexOf(conductor.size);
    };
    const places = [5, 4, 3, 2, 1.5, 1, 0.7].map(sizeAt);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });
});

test('a charger past what one conductor carries has no circuit and a finding', () => {
  const { circuits, findings } = planOf(trunkLot([20], { chargers: [charger('C1', 'D1', 'P1', { amps: 1200 })] }));
  expect(circuits).toEqual([]);
  expect(findings.filter(({ rule }) => rule === 'circuit-size').map(({ about }) => about)).toEqual([['C1', 'P1']]);
});

test('total drop and volts at the box start from what the supply has at the panel', () => {
  // No source: the panel is held at 208 V, so the total is the branch.
  const circuit = alone(32, 90);
  expect(circuit.totalDropPercent).toBeCloseTo(circuit.branchDropPercent, 9);
  expect(circuit.voltsAtBox).toBeCloseTo(208 * (1 - circuit.totalDropPercent / 100), 9);
});

describe('ambient by place', () => {
  const raceways: SiteFile['raceways'] = [
    {
      id: 'R1',
      path: [
        [0, 0, 10],
        [40, 0, 10],
      ],
      method: 'EMT',
      place: 'overhead',
    },
    {
      id: 'R2',
      path: [
        [40, 0, 10],
        [90, 0, 10],
      ],
      method: 'PVC40',
      place: 'underground',
    },
  ];

  test('is that of the hottest place on the way', () => {
    const at = (placeAmbientC: NonNullable<NonNullable<SiteFile['rules']>['placeAmbientC']>) =>
      alone(32, 90, { raceways, rules: { placeAmbientC } });
    // THWN-2 at 90 °C: 0.91 to 40 °C, 0.71 to 60, 1.04 to 25 (310.15(B)(1)(1)).
    expect(at({ overhead: 60, underground: 20 }).factors.ambient).toBe(0.71);
    expect(at({ overhead: 25, underground: 20 }).factors.ambient).toBe(1.04);
    expect(at({ underground: 20 }).factors.ambient).toBe(0.91);
  });

  test('is what a raceway says of itself, in place of the rule for its place', () => {
    const [first, second] = raceways;
    const own = (ambientC: number) =>
      alone(32, 90, { raceways: [first!, { ...second!, ambientC }], rules: { placeAmbientC: { underground: 20 } } });
    expect(own(60).ambientC).toBe(60);
    expect(own(10).ambientC).toBe(40);
  });

  // NEC 310.15(B)(2): in the sun on a roof, closer to it than 7/8 in., 33 °C are added; XHHW-2 is exempt.
  test('is 33 °C more in the sun close above a roof, unless the insulation is exempt', () => {
    const [first, second] = raceways;
    const roof = (aboveRoof: number, insulation: 'THWN-2' | 'XHHW-2' = 'THWN-2') =>
      alone(32, 90, { raceways: [{ ...first!, aboveRoof }, second!], rules: { insulation } });
    expect(roof(0.5 / 12).ambientC).toBe(73);
    // THWN-2 at 90 °C: 0.50 to 75 °C.
    expect(roof(0.5 / 12).factors.ambient).toBe(0.5);
    expect(roof(0.875 / 12).ambientC).toBe(40);
    expect(roof(0, 'XHHW-2').ambientC).toBe(40);
  });

  test('is the ambient of the site where no place says otherwise', () => {
    expect(alone(32, 90, { raceways, rules: { ambientC: 50 } }).ambientC).toBe(50);
  });
});

test('aluminum circuits are sized by their own columns', () => {
  // 8 AWG aluminum is 40 A at 75 °C (310.16), grounding 8 AWG aluminum for 40 A (250.122).
  const circuit = alone(32, 20, { rules: { metal: 'aluminum' } });
  expect(sizes(circuit)).toEqual([40, '8', '8', 'ampacity']);
  expect(circuit.conductor.metal).toBe('aluminum');
});

test('a dry insulation in an outdoor raceway is worth a look', () => {
  const rules = (insulation: 'THHN' | 'THWN-2') =>
    planOf(trunkLot([20], { rules: { insulation } })).findings.some(({ rule }) => rule === 'wet-insulation');
  expect(rules('THHN')).toBe(true);
  expect(rules('THWN-2')).toBe(false);
});

test('single-phase equipment puts all its chargers on its two lines', () => {
  const { circuits } = planOf(trunkLot([20, 30], { equipment: [panel('P1', [0, 0, 10], { phases: 1, volts: 240 })] }));
  expect(circuits.map(({ phases }) => phases)).toEqual(['AB', 'AB']);
});
