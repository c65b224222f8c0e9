import { expect, test } from 'vitest';
import { longestRun } from '../../../calc/circuits/longest-run.ts';
import type { DropCircuit } from '../../../calc/circuits/voltage-drop.ts';
import { voltageDrop } from '../../../calc/circuits/voltage-drop.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import circuits from './circuits.json' with { type: 'json' };

// make.py: the same circuits by complex numbers, three phases line by line, and a root finder.
test.each(circuits)('$phases-phase $volts V, $amps A over $length ft at $powerFactor', (row) => {
  const circuit = { ...row, method: 'exact' } as unknown as DropCircuit & { length: number; limitPercent: number };
  const drop = voltageDrop(nec, circuit);
  expect(drop.voltsAtLoad).toBeCloseTo(row.voltsAtLoad, 9);
  expect(drop.dropVolts).toBeCloseTo(row.volts - row.voltsAtLoad, 9);
  expect(drop.dropPercent).toBeCloseTo(100 * (1 - row.voltsAtLoad / row.volts), 9);
  expect(longestRun(nec, circuit)).toBeCloseTo(row.longestFeet, 6);
});
