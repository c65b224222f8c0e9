import { describe, expect, test } from 'vitest';
import { VOLTAGE_RANGE, voltageRange } from '../../../calc/tables/voltage-range.ts';
import { chargers, feeder, load, panel, siteOf, source, supplied } from './small-site.ts';

describe('voltage rise from generation', () => {
  const behind = (va: number, length: number) =>
    supplied(
      siteOf({
        equipment: [source(208), panel('P', { busAmps: 400 })],
        feeders: [feeder('SVC', 'P', { length, breakerAmps: 200 })],
        loads: [load('P', 'PV', { va, phases: 3, volts: 208, generation: true })],
      }),
    );
  const told = (result: ReturnType<typeof behind>) => result.findings.filter(({ rule }) => rule === 'voltage-rise');

  test('60 kVA behind 600 ft of 3/0 lift 208 V to some 220.5 V: over 218 V', () => {
    const result = behind(60_000, 600);
    const [finding] = told(result);
    expect(finding).toMatchObject({
      severity: 'fail',
      about: ['P'],
      limit: 218,
      unit: 'V',
      source: 'ANSI C84.1 range A',
    });
    expect(finding!.value).toBeCloseTo(result.supply.equipment[1]!.highestVolts!, 9);
    // By hand: I = P / (sqrt 3 V2), V2 = V1 + sqrt 3 I r, r = 0.6 x 0.077 ohm: V2 (V2 - 208) = 60,000 x 0.0462.
    const byHand = 104 + Math.sqrt(104 ** 2 + 60_000 * 0.0462);
    expect(Math.abs(finding!.value! - byHand)).toBeLessThan(0.15);
  });

  test('a third of it is within the range', () => {
    expect(told(behind(20_000, 600))).toEqual([]);
  });
});

describe('the voltage window', () => {
  const at = (length: number, total?: number) =>
    supplied(
      siteOf({
        equipment: [source(208), panel('P')],
        feeders: [feeder('SVC', 'P', { length })],
        chargers: chargers('P', 3),
        loads: [load('P', 'L')],
        ...(total !== undefined && { rules: { dropLimit: { total, branch: 3 } } }),
      }),
    );
  const told = (result: ReturnType<typeof at>) => result.findings.filter(({ rule }) => rule === 'voltage-window');

  test('boxes under 187 V of 208 fail by it, whatever drop the site allows', () => {
    const result = at(3000, 15);
    const box = told(result).find(({ about }) => about[0]!.startsWith('EV'));
    expect(box).toMatchObject({ severity: 'fail', limit: 187, about: expect.arrayContaining(['P']) });
    const worst = Math.max(...result.boxes.map((one) => one!.worstDropPercent));
    expect(box!.value).toBeCloseTo(208 * (1 - worst / 100), 9);
    expect(told(at(500, 15))).toEqual([]);
  });

  test('other loads are looked at where they hang', () => {
    const about = told(at(4000, 30)).map(({ about: ids }) => ids);
    expect(about).toContainEqual(['P']);
  });
});

test('the range is 120 V times the ratio, within a volt, to 5% over and 10% under', () => {
  for (const { nominal, most, least } of VOLTAGE_RANGE.rows) {
    expect(Math.abs(most - 1.05 * nominal)).toBeLessThanOrEqual(1);
    expect(Math.abs(least - 0.9 * nominal)).toBeLessThanOrEqual(1);
  }
  expect(voltageRange(600)).toEqual({ nominal: 600, most: 630, least: 540 });
});
