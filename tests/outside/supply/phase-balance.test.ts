import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assignPhases } from '../../../calc/supply/phases/phases.ts';

interface Row {
  id: string;
  loads: number[];
  minMaxPhaseSum: number;
  minMaxLineCurrentLL: number;
}

const { rows } = JSON.parse(readFileSync(new URL('phase-balance.json', import.meta.url), 'utf8')) as { rows: Row[] };

describe('phase assignments reach the optima proved by enumeration', () => {
  test('all fourteen instances are held', () => expect(rows).toHaveLength(14));

  test.each(rows)('$id across the lines', ({ loads, minMaxLineCurrentLL }) => {
    const { assignment, worstLineAmps, boundAmps } = assignPhases({ amps: loads, connection: 'line-to-line' });
    expect(worstLineAmps).toBeCloseTo(minMaxLineCurrentLL, 6);
    expect(boundAmps).toBe(worstLineAmps);
    const leg = (name: string): number => loads.reduce((sum, amps, i) => sum + (assignment[i] === name ? amps : 0), 0);
    const [ab, bc, ca] = [leg('AB'), leg('BC'), leg('CA')];
    const lines = [ab ** 2 + ca ** 2 + ab * ca, ab ** 2 + bc ** 2 + ab * bc, bc ** 2 + ca ** 2 + bc * ca];
    expect(Math.sqrt(Math.max(...lines))).toBeCloseTo(minMaxLineCurrentLL, 6);
  });

  test.each(rows)('$id to neutral', ({ loads, minMaxPhaseSum }) => {
    const { assignment, worstLineAmps, boundAmps } = assignPhases({ amps: loads, connection: 'line-to-neutral' });
    expect(worstLineAmps).toBe(minMaxPhaseSum);
    expect(boundAmps).toBe(minMaxPhaseSum);
    const leg = (name: string): number => loads.reduce((sum, amps, i) => sum + (assignment[i] === name ? amps : 0), 0);
    expect(Math.max(leg('A'), leg('B'), leg('C'))).toBe(minMaxPhaseSum);
  });
});
