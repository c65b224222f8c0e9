import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { box, charger, panel } from '../../routing/network/sites.ts';
import { planOf } from './conduits-parts.ts';
import { trunkLot } from './lots.ts';

const brief = ({ from, to, length, circuits, tradeSize }: Conduit): unknown[] => [
  from,
  to,
  length,
  circuits,
  tradeSize,
];

describe('conduits of a trunk', () => {
  const { conduits, circuits } = planOf(trunkLot([50, 60, 70]));

  test('three circuits share a conduit and each leaves it at its own box', () => {
    // By hand: 6 of 8 AWG THWN-2 (0.0366) and one 10 (0.0211) are 0.2407 in²; 40% of 3/4 EMT is 0.213, of 1 in. 0.346.
    // Four and one: 0.1675, 3/4 in. Two and one: three conductors, 0.0943 of 0.122, 1/2 in. (Chapter 9 Tables 4, 5.)
    expect(conduits.map(brief)).toEqual([
      ['P1', 'D1', 50, ['C1', 'C2', 'C3'], '1'],
      ['D1', 'D2', 10, ['C2', 'C3'], '3/4'],
      ['D2', 'D3', 10, ['C3'], '1/2'],
    ]);
    expect(conduits[0]!.fillPercent).toBeCloseTo((100 * 0.2407) / 0.864, 10);
    expect(conduits.map(({ fillLimit }) => fillLimit)).toEqual([40, 40, 40]);
  });

  test('one grounding conductor serves all circuits of a conduit (250.122(C))', () => {
    expect(conduits[0]!.conductors).toEqual([
      { use: 'line', size: '8', insulation: 'THWN-2', count: 6 },
      { use: 'grounding', size: '10', insulation: 'THWN-2', count: 1 },
    ]);
  });

  test('six conductors that carry current derate all three, pilots and grounding not counted', () => {
    expect(circuits.map(({ currentCarrying }) => currentCarrying)).toEqual([6, 6, 6]);
    expect(circuits[0]!.factors).toEqual({ ambient: 0.91, bundling: 0.8 });
    // 55 A x 0.91 x 0.80 (310.16, 310.15(B)(1)(1), 310.15(C)(1)).
    expect(circuits[0]!.ampacity).toBeCloseTo(40.04, 10);
  });
});

test('a pull point on the trunk ends one conduit and begins the next', () => {
  const { conduits } = planOf(trunkLot([50], { pullpoints: [{ id: 'PB1', at: [20, 0, 10.1] }] }));
  expect(conduits.map(brief)).toEqual([
    ['P1', 'PB1', 20, ['C1'], '1/2'],
    ['PB1', 'D1', 30, ['C1'], '1/2'],
  ]);
});

test('a pull point off the raceway by more than the join tolerance opens nothing', () => {
  expect(planOf(trunkLot([50], { pullpoints: [{ id: 'PB1', at: [20, 0, 10.3] }] })).conduits).toHaveLength(1);
});

test('a pull point on no raceway is worth a look', () => {
  const loose = (z: number): unknown[] =>
    planOf(trunkLot([50], { pullpoints: [{ id: 'PB1', at: [20, 0, z] }] }))
      .findings.filter(({ rule }) => rule === 'loose-pull-point')
      .map(({ about }) => about);
  expect(loose(10.3)).toEqual([['PB1']]);
  expect(loose(10.2)).toEqual([]);
});

test('conduits side by side that one pull point would cure are one finding', () => {
  const taps = [230, 231, 232, 233, 234, 235, 236];
  const findings = planOf(trunkLot(taps)).findings.filter(({ rule }) => rule === 'pull-length');
  expect(findings).toHaveLength(1);
  expect(findings[0]!.says).toContain(`200' 0" from P1`);
  expect(findings[0]!.about.filter((id) => id.startsWith('C'))).toHaveLength(7);
});

test('boxes on taps leave the shared conduit at junctions; the last one goes on to its box with a bend', () => {
  const drops = [box('D1', [50, 0, 7]), box('D2', [60, 0, 7])];
  const { conduits } = planOf(trunkLot([50, 60], { drops }));
  expect(conduits.map(brief)).toEqual(
    [
      ['P1', 'P1-1.J1', 50, ['C1', 'C2'], '3/4'],
      ['P1-1.J1', 'D1', 3, ['C1'], '1/2'],
      ['P1-1.J1', 'D2', 13, ['C2'], '1/2'],
    ].sort(),
  );
});

test('two chargers at one box share a conduit all the way', () => {
  const { conduits, circuits } = planOf(
    trunkLot([50], { chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D1', 'P1')] }),
  );
  expect(conduits.map(brief)).toEqual([['P1', 'D1', 50, ['C1', 'C2'], '3/4']]);
  expect(circuits.map((circuit) => circuit.conduits)).toEqual([['P1-1.1'], ['P1-1.1']]);
});

test('a change of method ends a conduit', () => {
  const { conduits } = planOf(
    trunkLot([50], {
      raceways: [
        {
          id: 'R1',
          path: [
            [0, 0, 10],
            [30, 0, 10],
          ],
          method: 'EMT',
          place: 'overhead',
        },
        {
          id: 'R2',
          path: [
            [30, 0, 10],
            [60, 0, 10],
          ],
          method: 'PVC40',
          place: 'overhead',
        },
      ],
    }),
  );
  expect(conduits.map(({ method, from, to, length }) => [method, from, to, length])).toEqual([
    ['EMT', 'P1', 'P1-1.J1', 30],
    ['PVC40', 'P1-1.J1', 'D1', 20],
  ]);
});

test('a nipple of 24 in. may be 60% full and bundles nothing', () => {
  const { conduits, circuits } = planOf(trunkLot([2, 2, 2]));
  // 0.2407 in² is 45% of 3/4 EMT, 0.533 in²: under 60 (Chapter 9 Note 4; 310.15(C)(1)(b)).
  expect(conduits.map(({ tradeSize, fillLimit }) => [tradeSize, fillLimit])).toEqual([['3/4', 60]]);
  expect(circuits.map(({ currentCarrying }) => currentCarrying)).toEqual([2, 2, 2]);
});

test('a pilot takes room and counts for nothing else', () => {
  const with32 = (pilot: boolean): Plan => planOf(trunkLot([50], { chargers: [charger('C1', 'D1', 'P1', { pilot })] }));
  const without = with32(false).conduits[0]!;
  const carried = with32(true).conduits[0]!;
  // 14 AWG THWN-2 is 0.0097 in², 1/2 EMT 0.304 in².
  expect(carried.fillPercent - without.fillPercent).toBeCloseTo((100 * 0.0097) / 0.304, 10);
  expect(with32(true).circuits[0]!.currentCarrying).toBe(2);
});

test('no more circuits share a conduit than the rule allows', () => {
  const taps = [50, 60, 70, 80, 90, 100, 110];
  for (const circuitsPerConduit of [1, 2, 3, 7]) {
    const { conduits } = planOf(trunkLot(taps, { rules: { circuitsPerConduit } }));
    expect(Math.max(...conduits.map((conduit) => conduit.circuits.length))).toBeLessThanOrEqual(circuitsPerConduit);
  }
});

test('four circuits derate to 70% and stay on 8 AWG only because 35 A may be protected at 40 (240.4(B))', () => {
  const { circuits } = planOf(trunkLot([50, 50, 50, 50], { rules: { circuitsPerConduit: 4 } }));
  const bundled = circuits.filter(({ currentCarrying }) => currentCarrying === 8);
  // 55 x 0.91 x 0.70 = 35.035: the next standard rating is 40 A.
  for (const { ampacity, conductor } of bundled) {
    expect(ampacity).toBeCloseTo(35.035, 10);
    expect(conductor.size).toBe('8');
  }
});

test('more than 360 degrees between openings is a finding, and a pull point cures it', () => {
  const path: [number, number, number][] = [
    [0, 0, 10],
    [10, 0, 10],
    [10, 10, 10],
    [20, 10, 10],
    [20, 0, 10],
    [30, 0, 10],
    [30, 10, 10],
    [40, 10, 10],
  ];
  const bent: Partial<SiteFile> = {
    raceways: [{ id: 'R1', path, method: 'EMT', place: 'overhead' }],
    drops: [box('D1', [40, 10, 10])],
  };
  const bends = (plan: Plan): unknown[] =>
    plan.findings.filter(({ rule }) => rule === 'bends').map(({ value, limit }) => [value, limit]);
  expect(bends(planOf(trunkLot([40], bent)))).toEqual([[540, 360]]);
  expect(bends(planOf(trunkLot([40], { ...bent, pullpoints: [{ id: 'PB1', at: [20, 5, 10] }] })))).toEqual([]);
});

test('a pull longer than the limit is a finding', () => {
  const findings = planOf(trunkLot([230])).findings.filter(({ rule }) => rule === 'pull-length');
  expect(findings.map(({ value, limit, severity }) => [value, limit, severity])).toEqual([[230, 200, 'warn']]);
});

test('two panels on one raceway keep their circuits apart', () => {
  const file = trunkLot([40, 60], {
    equipment: [panel('P1', [0, 0, 10]), panel('P2', [70, 0, 10])],
    chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D2', 'P2')],
  });
  expect(planOf(file).conduits.map(brief)).toEqual([
    ['P1', 'D1', 40, ['C1'], '1/2'],
    ['P2', 'D2', 10, ['C2'], '1/2'],
  ]);
});
