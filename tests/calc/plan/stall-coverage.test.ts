import { expect, test } from 'vitest';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { coverageStep, stallCoverage } from '../../../calc/plan/stall-coverage.ts';

const reach = (charger: string, stall: string, coverage: number): Plan['reach'][number] =>
  ({ charger, stall, coverage }) as Plan['reach'][number];

test('a stall that two cords serve counts by the better one, and one without a charger not at all', () => {
  const found = stallCoverage([reach('C1', 'S1', 0.25), reach('C2', 'S1', 0.75), reach('C1', 'S2', 0)]);
  expect([...found]).toEqual([
    ['S1', 0.75],
    ['S2', 0],
  ]);
});

test('the steps of the shading part at none, half and all', () => {
  expect([undefined, 0, 1e-9, 0.499, 0.5, 0.999, 1].map(coverageStep)).toEqual([
    'unserved',
    'none',
    'under half',
    'under half',
    'half and over',
    'half and over',
    'all',
  ]);
});
