import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { isGuess, lineFor, type UnitPrice } from '../../../calc/prices/line-for.ts';
import type { PriceRow } from '../../../calc/prices/price-list.ts';
import { firstSize, sizesIn } from '../../../calc/prices/sizes-in.ts';

const line = (item: string, spec: string, material: number, hours = 1): PriceRow => ({
  item,
  spec,
  unit: 'each',
  material,
  hours,
});
const PANEL = '400 A bus, 350 A main, 208 V, three-phase, 42 spaces';

describe('sizes in a specification', () => {
  test.each([
    ['400 A bus, 350 A main', 'A bus', 400],
    ['400 A bus, 350 A main', 'A main', 350],
    ['400 A bus, 350 A main', 'A', 400],
    ['EMT 1-1/4 in', 'in', 1.25],
    ['EMT 3/4 in', 'in', 0.75],
    ['150 kVA, 480-208 V', 'V', 480],
    [`25' 6" usable, 32 A`, 'ft usable', 25.5],
    ['7.62 m usable, 32 A', 'ft usable', 25],
    ['2500 kVA, 12470-480 V', 'kVA', 2500],
    ['rating not given', 'A', null],
    ['4 AWG copper, black', 'A', null],
  ])('%s by %s', (spec, unit, value) => {
    const found = firstSize(spec, unit);
    if (value === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(value, 9);
  });
  test('are all there, from left to right', () => {
    expect(sizesIn('600 A bus, 480-208 V').map(({ value }) => value)).toEqual([600, 480, 208]);
  });
});

describe('the line for an item', () => {
  const own = line('panelboard', PANEL, 1);
  const range = line('panelboard', '400 to 600 A bus', 2);
  const wide = line('panelboard', '100 to 800 A bus', 3);
  const high = line('panelboard', '400 to 600 A bus, 480 V', 4);
  const any = line('panelboard', '*', 5);
  const by = (rows: readonly PriceRow[], spec = PANEL) => lineFor(rows, 'panelboard', spec, 'each');
  test('is its own, else the closest range, else the one for any, whatever their order', () => {
    for (const rows of [
      [any, high, wide, range, own],
      [own, range, wide, high, any],
    ]) {
      expect(by(rows)).toMatchObject({ material: 1, how: 'one' });
      expect(by(rows.filter((row) => row !== own))).toMatchObject({ material: 2, how: 'range' });
      expect(by(rows, PANEL.replace('208', '480'))).toMatchObject({ material: 4, line: `panelboard, ${high.spec}` });
      expect(by(rows, '1200 A bus')).toMatchObject({ material: 5, how: 'any', line: 'panelboard, *' });
      expect(by(rows, '800 A bus')).toMatchObject({ material: 3 });
    }
  });
  test('of another unit is none', () => {
    expect(lineFor([any], 'panelboard', PANEL, 'ft')).toBeNull();
  });
  test('a curve is a power of the size between two points, and beyond them a guess', () => {
    // 100 A at $1,000, 400 A at $8,000: the power is log 8 / log 4 = 1.5; at 200 A 1000 x 2^1.5; at 1600 A 8000 x 8.
    const curve = [line('panelboard', 'at 100 A bus', 1000, 2), line('panelboard', 'at 400 A bus', 8000, 8)];
    expect(by(curve)).toMatchObject({ material: 8000, hours: 8, how: 'curve', line: 'panelboard, at 400 A bus' });
    const between = by(curve, '200 A bus')!;
    expect(between.material).toBeCloseTo(1000 * 2 ** 1.5, 6);
    expect(between.hours).toBeCloseTo(4, 9);
    expect(between).toMatchObject({ how: 'curve', line: 'panelboard, between at 100 A bus and at 400 A bus' });
    const beyond = by([...curve, any], '1600 A bus')!;
    expect(beyond.material).toBeCloseTo(64_000, 6);
    expect(isGuess(beyond.how)).toBe(true);
    expect(beyond.line).toContain('beyond');
  });
  test('a conductor is one of another color, and the raceway of a feeder a raceway', () => {
    const rows = [line('conductor', '8 AWG copper THWN-2', 1), line('raceway', 'EMT 1 in', 2)];
    for (const item of ['conductor', 'feeder conductor', 'grounding conductor'])
      expect(lineFor(rows, item, '8 AWG copper THWN-2, black', 'each')?.material).toBe(1);
    expect(lineFor(rows, 'feeder raceway', 'EMT 1 in', 'each')?.material).toBe(2);
  });
});

describe('the invented list', () => {
  const price = (item: string, spec: string): UnitPrice => {
    const found = lineFor(INVENTED_LIST.rows, item, spec, 'each');
    expect(found, `${item}, ${spec}`).not.toBeNull();
    return found!;
  };
  /** Specs of an item by one figure, from small to large. */
  const FAMILIES: readonly (readonly [item: string, spec: (size: number) => string, low: number, high: number])[] = [
    ...['', ', 208 V', ', 480 V'].flatMap((volts) => [
      ['service equipment', (amps: number) => `${amps} A bus${volts}, three-phase`, 100, 4000] as const,
      ['switchboard', (amps: number) => `${amps} A bus, ${amps} A main${volts}`, 400, 5000] as const,
      ['panelboard', (amps: number) => `${amps} A bus${volts}, 42 spaces`, 60, 1200] as const,
      ['disconnect', (amps: number) => `${amps} A bus${volts}`, 30, 1200] as const,
    ]),
    ['transformer', (kva) => `${kva} kVA, 480-208 V`, 15, 1000],
    ['transformer', (kva) => `${kva} kVA, 12470-480 V`, 75, 5000],
    ['disconnect', (amps) => `${amps} A 208 V, 2-pole, lockable`, 30, 1200],
    ['charging module', (amps) => `${amps} A 208 V single-phase`, 16, 80],
    ['charging module', (amps) => `${amps} A 480 V three-phase`, 16, 80],
    ['cord', (amps) => `25' 0" usable, ${amps} A`, 16, 80],
    ['cord', (feet) => `${feet}' 0" usable, 32 A`, 5, 60],
    ['junction box', (inches) => `at the drop, box of ${inches} cu in`, 15, 480],
    ['junction box', (inches) => `on the raceway, pull box ${inches} in long`, 6, 72],
    ['pull point', (inches) => `pull box ${inches} in long`, 6, 72],
    ['cover', (inches) => `pull box ${inches} in long`, 6, 72],
  ];
  test('a larger one never costs less or takes less, and none in the range is a guess', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FAMILIES), fc.double({ min: 0, max: 1, noNaN: true }), (family, part) => {
        const [item, spec, low, high] = family;
        const size = Math.round(low + (high - low) * part);
        const larger = Math.min(high, Math.round(size * 1.3) + 1);
        const [a, b] = [price(item, spec(size)), price(item, spec(larger))];
        expect(isGuess(a.how), a.line).toBe(false);
        expect(b.material).toBeGreaterThanOrEqual(a.material);
        expect(b.hours).toBeGreaterThanOrEqual(a.hours);
      }),
    );
  });
  test('a switchboard of 4,000 A at 480 V is not one of 600 A at 208 V', () => {
    const [large, small] = ['4000 A bus, 480 V', '600 A bus, 208 V'].map((spec) => price('switchboard', spec).material);
    expect(large! / small!).toBeGreaterThan(5);
  });
  test('a transformer from 12.47 kV is not one of 480 V', () => {
    expect(price('transformer', '150 kVA, 12470-480 V').material).toBeGreaterThan(
      2 * price('transformer', '150 kVA, 480-208 V').material,
    );
  });
  test('what has no size is priced by a line for any, and said to be a guess', () => {
    expect(isGuess(price('panelboard', 'rating not given').how)).toBe(true);
  });
});
