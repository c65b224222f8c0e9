import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { MOST_PRICE_CHARACTERS, readPrices } from '../../../calc/prices/read-prices.ts';
import { isSpent } from '../../../calc/takeoff/cutting/budget.ts';
import { cut } from '../../../calc/takeoff/cutting/cut.ts';
import { knapsack } from '../../../calc/takeoff/cutting/knapsack.ts';
import { SILENT } from '../../../calc/words/explain.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { readDxf } from '../../read-dxf.ts';

// What is held here are counts, never times: what made these slow was that nothing was counted.
describe('work that a file or an input can ask for is bounded', () => {
  test('drops and stalls in one place: a finding for the place, not for every pair', () => {
    const n = 150;
    const every = <T>(make: (i: number) => T): T[] => Array.from({ length: n }, (_, i) => make(i));
    const { findings } = plan(
      toSite({
        format: 'overrow/site',
        version: 1,
        units: 'ft',
        name: 'heap',
        stalls: every((i) => ({ id: `S${i}`, at: [0, 18], width: 9, depth: 18, heading: 270 })),
        drops: every((i) => ({ id: `D${i}`, box: [6, 9, 11], retractor: [6, 9, 10], cord: 25 })),
        equipment: [
          { id: 'P1', kind: 'panelboard', at: [-9, -9], size: [3, 1, 6], entry: [0, 0, 11], volts: 208, phases: 3 },
        ],
        chargers: every((i) => ({
          id: `E${i}`,
          drop: `D${i}`,
          stalls: [`S${i}`],
          from: 'P1',
          amps: 32,
          volts: 208,
          phases: 1 as const,
        })),
      }),
    );
    const of = (rule: string) => findings.filter((finding) => finding.rule === rule);
    expect(of('boxes-coincide')).toHaveLength(1);
    expect(of('boxes-coincide')[0]!.says).toContain('150 boxes are in one place');
    expect(of('stalls-overlap')).toHaveLength(1);
  });

  test('a text in which one field stands a hundred thousand times tells a thousand and counts the rest', () => {
    const fields = Array.from({ length: 100_000 }, () => '"note":"a"').join(',');
    const read = readSite(`{"format":"overrow/site","version":1,"units":"ft","name":"x",${fields}}`);
    expect(!read.ok && read.errors).toHaveLength(1001);
    expect(!read.ok && read.errors.at(-1)!.says).toBe('and 98,999 more errors');
  });

  test('a polyline of arcs is counted before it is drawn out', () => {
    const vertices = Array.from({ length: 50_000 }, (_, i) => `10\n${i % 7}\n20\n${i % 5}\n42\n1000`).join('\n');
    const read = readDxf(`0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n70\n1\n${vertices}\n0\nENDSEC\n0\nEOF\n`);
    expect(read).toMatchObject({ ok: false, fault: { says: 'is past 2,000,000 points' } });
  });

  test('a price list that is too long is refused with its length, and faults are counted', () => {
    expect(readPrices('"'.repeat(MOST_PRICE_CHARACTERS + 1), 'x')).toMatchObject({
      ok: false,
      errors: [{ says: 'a list may have 5 million characters, and this has 5.0 million' }],
    });
    const lines = Array.from({ length: 3000 }, (_, i) => `item ${i},*,each,no,1`).join('\n');
    const read = readPrices(`item,spec,unit,material,hours\n${lines}`, 'x');
    expect(!read.ok && read.errors).toHaveLength(1001);
    expect(!read.ok && read.errors.at(-1)!.says).toMatch(/^and 2,\d+ more faults$/);
  });
});

describe('a cutting plan', () => {
  test('that cannot be proved within what there is to spend stands beside its bound', () => {
    const pieces = Array.from({ length: 120 }, (_, i) => 190 + ((i * 7919) % 1511) / 10);
    const { stocks, bound, plan: piles } = cut({ stock: 1000, pieces });
    expect(piles.flat().sort((a, b) => a - b)).toEqual([...pieces].sort((a, b) => a - b));
    expect(piles.every((pile) => pile.reduce((sum, piece) => sum + piece, 0) <= 1000 + 1e-6)).toBe(true);
    expect(bound).toBeLessThanOrEqual(stocks);
    expect(bound).toBeGreaterThanOrEqual(Math.ceil(pieces.reduce((sum, piece) => sum + piece, 0) / 1000));
  });

  test('spends one budget in all its parts, and with none left a filling still has a bound over it', () => {
    const problem = { capacity: 100, sizes: [60, 45, 30], wanted: [1, 2, 3] };
    const worth = [60, 45, 30];
    const budget = { left: 3 };
    const { value, upper } = knapsack(problem, worth, budget);
    expect(isSpent(budget)).toBe(true);
    expect(upper).toBeGreaterThanOrEqual(100);
    expect(value).toBeLessThanOrEqual(100);
  });

  test('of more pieces or lengths than are planned is refused with the count', () => {
    const ask = (pieces: readonly number[]) => CALC_KINDS.get('cut')!({ stock: 100, pieces }, SILENT);
    expect(ask(Array.from({ length: 20_001 }, () => 5))).toMatchObject({
      ok: false,
      errors: [{ place: 'pieces', says: expect.stringContaining('20,001 pieces') }],
    });
    expect(ask(Array.from({ length: 2001 }, (_, i) => 5 + i / 1000))).toMatchObject({ ok: false });
  });
});

test('a way round more corners than are looked at is refused with the count', () => {
  const around = Array.from({ length: 5000 }, (_, i) => [
    [i, 0],
    [i + 0.5, 0],
    [i, 1],
  ]);
  expect(CALC_KINDS.get('reach')!({ retractor: [0, 0, 10], inlet: [9, 9, 3], around }, SILENT)).toMatchObject({
    ok: false,
    errors: [{ place: 'around', says: expect.stringContaining('15,000 corners') }],
  });
});
