import { describe, expect, test } from 'vitest';
import { calc, drop, dropWithoutLength, duty, dutyWithoutAmps, eights, errors, value } from './kind-inputs.ts';

describe('spellings', () => {
  test('sizes are strings or numbers, metals words or symbols', () => {
    for (const size of ['8', 8, ' 8 '])
      for (const metal of ['copper', 'Cu'])
        expect(value('voltage-drop', { ...drop, conductor: { size, metal } })).toEqual(value('voltage-drop', drop));
    expect(value('voltage-drop', { ...drop, conductor: { size: 250, metal: 'Al' } })).toEqual(
      value('voltage-drop', { ...drop, conductor: { size: '250', metal: 'aluminum' } }),
    );
  });
  test('trade sizes are written with a dash, a space or as a number', () => {
    for (const tradeSize of ['1-1/4', '1 1/4', 1.25, '1.25'])
      expect(value('fill', { method: 'EMT', conductors: eights, tradeSize })).toMatchObject({ tradeSize: '1-1/4' });
  });
  test('insulations of pilot conductors may be called either way, bare conductors bare', () => {
    const pair = (insulation: string) =>
      value('fill', { method: 'EMT', conductors: [{ size: 18, insulation, count: 2 }] });
    expect(pair('TFFN')).toEqual(pair('TFN/TFFN'));
    expect(pair('TFN')).toMatchObject({ conductorArea: 0.011 });
    const ground = { method: 'EMT', conductors: [{ size: '10', insulation: 'bare', count: 1 }] };
    expect(value('fill', ground)).toMatchObject({ conductorArea: 0.011 });
  });
  test('a conductor of a grounding calculation may be a size or an object', () => {
    const of = (conductor: unknown, conductorNeeded: unknown) =>
      value('grounding', { breakerAmps: 40, metal: 'Cu', conductor, conductorNeeded });
    expect(of({ size: '6', metal: 'copper', sets: 1 }, { size: 8 })).toEqual(of('6', '8'));
    expect(of('6', '8')).toEqual({ grounding: { size: '8' } });
  });
  test('growth may name a metal, a material or a wiring method', () => {
    const of = (named: object) => value('expansion', { length: 100, temperatureRangeC: 50, ...named });
    expect(of({ metal: 'steel' })).toEqual(of({ material: 'EMT' }));
    expect(of({ material: 'PVC40' })).toEqual(of({ material: 'PVC' }));
  });
});

describe('voltage-drop', () => {
  test('by resistance needs neither raceway nor power factor, and heeds neither', () => {
    const { raceway: _r, powerFactor: _p, ...bare } = { ...drop, method: 'resistance' };
    expect(value('voltage-drop', bare)).toEqual(value('voltage-drop', { ...drop, method: 'resistance' }));
  });
  test('by impedance needs both', () => {
    const { raceway: _r, powerFactor: _p, ...bare } = { ...drop, method: 'impedance' };
    expect(errors('voltage-drop', bare)).toEqual({ raceway: 'missing', powerFactor: 'missing' });
  });
  test('names the nested place of an error', () => {
    const places = errors('voltage-drop', { ...drop, conductor: { size: '7', metal: 'tin' } });
    expect(Object.keys(places)).toEqual(['conductor.size', 'conductor.metal']);
    expect(places['conductor.size']).toContain('expected a conductor size');
  });
  test('says what it expected and what came', () => {
    expect(errors('voltage-drop', { ...drop, volts: -5, phases: 2 })).toEqual({
      volts: 'expected >0, got -5',
      phases: 'expected (1 | 3), got 2',
    });
    const { method: _m, ...unsaid } = drop;
    expect(errors('voltage-drop', unsaid).method).toMatch(/^missing: expected .*exact/);
  });
  test('refuses a size that the table lacks', () => {
    const conductor = { size: '14', metal: 'aluminum' };
    expect(errors('voltage-drop', { ...drop, conductor })).toHaveProperty(['conductor.size']);
    const large = { ...drop, method: 'resistance', conductor: { size: '2000', metal: 'copper' } };
    expect(errors('voltage-drop', large)).toHaveProperty(['conductor.size']);
  });
  test('refuses a method that it does not know, and says which it does', () => {
    expect(errors('voltage-drop', { ...drop, method: 'guess' }).method).toContain('exact');
  });
  test('refuses numbers whose answer is past all numbers', () => {
    expect(calc('voltage-drop', { ...drop, amps: 1e308, length: 1e308 }).ok).toBe(false);
  });
});

describe('longest-run', () => {
  test('comes back through voltage-drop', () => {
    const { length } = value('longest-run', { ...dropWithoutLength, limitPercent: 3 }) as { length: number };
    expect((value('voltage-drop', { ...drop, length }) as { dropPercent: number }).dropPercent).toBeCloseTo(3, 10);
  });
  test('refuses where no length drops so far', () => {
    expect(errors('longest-run', { ...dropWithoutLength, amps: 0, limitPercent: 3 })).toHaveProperty('limitPercent');
  });
});

describe('branch', () => {
  test('takes amperes, or volt-amperes with volts and phases', () => {
    expect(value('branch', { ...dutyWithoutAmps, va: 7680, volts: 240, phases: 1 })).toEqual(value('branch', duty));
    expect(value('branch', { ...dutyWithoutAmps, va: 32 * 208 * Math.sqrt(3), volts: 208, phases: 3 })).toEqual(
      value('branch', duty),
    );
  });
  test('answers with sizes of conductor and grounding conductor', () => {
    expect(value('branch', duty)).toEqual({
      breakerAmps: 40,
      conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' },
      grounding: { size: '10' },
    });
  });
  test('refuses both, neither, and volt-amperes alone', () => {
    expect(errors('branch', { ...duty, va: 7680 })).toHaveProperty('amps');
    expect(errors('branch', dutyWithoutAmps)).toHaveProperty('amps');
    expect(errors('branch', { ...dutyWithoutAmps, va: 7680 })).toHaveProperty('volts');
    expect(errors('branch', { ...dutyWithoutAmps, va: 7680, volts: 240 })).toHaveProperty('phases');
  });
  test('refuses loads past the tables, and says which', () => {
    expect(errors('branch', { ...duty, amps: 700 })['']).toContain('310.16');
    expect(errors('branch', { ...duty, amps: 5000 })['']).toContain('240.6');
  });
});

test('grounding refuses a needed size alone and a device past the table', () => {
  expect(errors('grounding', { breakerAmps: 40, metal: 'Cu', conductorNeeded: '8' })).toHaveProperty('conductor');
  expect(errors('grounding', { breakerAmps: 8000, metal: 'Cu' })).toHaveProperty('breakerAmps');
});
