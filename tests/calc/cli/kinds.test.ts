import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KINDS } from '../../../calc/cli/kinds/index.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';

const calc = (kind: string, input: unknown) => {
  const work = KINDS.get(kind);
  if (work === undefined) throw new Error(`no kind ${kind}`);
  return work(input, SILENT);
};
const value = (kind: string, input: unknown) => {
  const result = calc(kind, input);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value;
};
/** Places that a refusal names, with what it says there. */
const errors = (kind: string, input: unknown): Readonly<Record<string, string>> => {
  const result = calc(kind, input);
  if (result.ok) throw new Error(`answered ${JSON.stringify(result.value)}`);
  return Object.fromEntries(result.errors.map(({ place, says }) => [place, says]));
};

const drop = {
  phases: 1,
  volts: 240,
  amps: 32,
  length: 150,
  conductor: { size: '8', metal: 'copper' },
  method: 'exact',
  raceway: 'PVC',
  powerFactor: 0.99,
};
const { length: _, ...dropWithoutLength } = drop;
const duty = {
  amps: 32,
  continuous: true,
  metal: 'copper',
  insulation: 'THWN-2',
  ambientC: 30,
  currentCarrying: 2,
  terminalC: 75,
};
const { amps: __, ...dutyWithoutAmps } = duty;
const unit = { kva: 150, primaryVolts: 480, secondaryVolts: 208, phases: 3 };
const eights = [{ size: '8', insulation: 'THWN-2', count: 3 }];
const pull = { segments: [{ kind: 'straight', length: 100 }], weightPerFoot: 1, friction: 0.5 };

const square = {
  nodes: 4,
  root: 0,
  terminals: [2, 2, 3],
  edges: [
    [0, 1, 10, 1],
    [1, 2, 10, 1],
    [2, 3, 10, 1],
    [0, 3, 10, 2],
  ],
  price: { raceway: 1, conductor: 1, conduit: 1, circuitsPerConduit: 2 },
};

/** A sound input of each kind, with the fields of its answer. */
const SOUND: readonly (readonly [kind: string, input: object, fields: readonly string[]])[] = [
  ['voltage-drop', drop, ['dropVolts', 'dropPercent', 'voltsAtLoad']],
  ['longest-run', { ...dropWithoutLength, limitPercent: 3 }, ['length']],
  [
    'ampacity',
    { conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' }, ambientC: 40, currentCarrying: 6 },
    ['tableAmpacity', 'temperatureFactor', 'bundlingFactor', 'ampacity'],
  ],
  ['branch', duty, ['breakerAmps', 'conductor', 'grounding']],
  ['grounding', { breakerAmps: 40, metal: 'copper', conductor: '6', conductorNeeded: '8' }, ['grounding']],
  ['bonding', { conductor: { size: '500', metal: 'copper', sets: 2 }, metal: 'copper' }, ['jumper']],
  ['electrode', { conductor: { size: 3, metal: 'Cu' }, metal: 'Al', electrode: 'rods' }, ['conductor']],
  ['fill', { method: 'EMT', conductors: eights }, ['conductorArea', 'fillPercent', 'limitPercent', 'tradeSize', 'ok']],
  ['box', { conductors: [{ size: '12', count: 3 }] }, ['volume']],
  ['pull-box', { straight: true, rows: [{ entries: ['2'] }] }, ['length']],
  [
    'transformer',
    { ...unit, impedancePercent: 5, xr: 2, loadKva: 100, powerFactor: 0.99 },
    ['primaryAmps', 'secondaryAmps', 'regulationPercent', 'faultAmps'],
  ],
  ['expansion', { material: 'PVC', length: 100, temperatureRangeC: 40 }, ['change']],
  ['pulling', pull, ['tension', 'sidewall']],
  ['reach', { retractor: [0, 0, 9], inlet: [4, 0, 3], around: [] }, ['needed', 'planLength']],
  ['phases', { amps: [32, 32, 40], connection: 'line-to-line' }, ['assignment', 'worstLineAmps', 'boundAmps', 'legs']],
  ['cut', { stock: 10, pieces: [4, 5, 6] }, ['stocks', 'bound', 'plan']],
  ['route', square, ['cost', 'bound', 'paths']],
];

describe.each(SOUND)('%s', (kind, input, fields) => {
  test('answers with the fields of the contract', () => {
    expect(Object.keys(value(kind, input)).sort()).toEqual([...fields].sort());
  });
  test('explains itself with the same answer, and each step has a source', () => {
    const { result, steps } = explained((tell) => KINDS.get(kind)?.(input, tell));
    expect(result).toEqual(calc(kind, input));
    expect(steps.length).toBeGreaterThan(0);
    for (const { find, formula, source } of steps)
      for (const text of [find, formula, source]) expect(text).toMatch(/\S/);
  });
  test('refuses an unknown field, and names it', () => {
    expect(errors(kind, { ...input, colour: 'red' })).toEqual({ colour: 'unknown field' });
  });
  test('refuses what is no object', () => {
    for (const wrong of [null, 3, 'text', []]) expect(calc(kind, wrong).ok).toBe(false);
  });
  test('refuses each number that is not finite', () => {
    const names = Object.entries(input).filter(([name, given]) => typeof given === 'number' && name !== 'phases');
    for (const [name] of names) expect(errors(kind, { ...input, [name]: Infinity })).toHaveProperty(name);
  });
  test('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...Object.keys(input)), fc.jsonValue()), (wrong) => {
        const { ok } = calc(kind, { ...input, ...wrong });
        expect(typeof ok).toBe('boolean');
      }),
      { numRuns: 100 },
    );
  });
});

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

describe('fill', () => {
  test('refuses tray, a trade size that the method lacks, and a conductor that the table lacks', () => {
    expect(errors('fill', { method: 'tray', conductors: eights }).method).toContain('Article 392');
    expect(errors('fill', { method: 'EMT', conductors: eights, tradeSize: '6' })).toHaveProperty('tradeSize');
    const pair = { size: '18', insulation: 'THWN-2', count: 2 };
    expect(Object.keys(errors('fill', { method: 'EMT', conductors: [...eights, pair] }))).toEqual(['conductors[1]']);
  });
});

describe('box', () => {
  test('takes counts at the largest conductor, or lists by size', () => {
    const conductors = [
      { size: '8', count: 2 },
      { size: '12', count: 2 },
    ];
    // 2 x 3 + 2 x 2.25, a ground and a clamp at 3 each, a yoke at 2 x 3.
    expect(value('box', { conductors, groundings: 2, clamps: 2, devices: 1 })).toEqual({ volume: 22.5 });
    const listed = { groundings: [{ size: '12', count: 2 }], devices: { size: '12', count: 1 } };
    expect(value('box', { conductors, clamps: true, ...listed })).toEqual({ volume: 20.25 });
  });
  test('refuses conductors of 4 AWG and larger', () => {
    expect(Object.keys(errors('box', { conductors: [{ size: '4', count: 1 }] }))).toEqual(['conductors[0].size']);
  });
});

describe('pull-box', () => {
  test('takes straight pulls apart from rows, or rows as straight pulls', () => {
    const rows = [{ entries: ['2', '1'] }];
    expect(value('pull-box', { rows })).toEqual({ length: 13 });
    expect(value('pull-box', { straight: true, rows })).toEqual({ length: 16 });
    expect(value('pull-box', { straight: '3', rows })).toEqual({ length: 24 });
    expect(value('pull-box', { straight: ['1', '1-1/2'], rows })).toEqual({ length: 13 });
  });
  test('refuses a box without raceways', () => {
    expect(errors('pull-box', { rows: [] })).toHaveProperty('rows');
  });
});

test('grounding refuses a needed size alone and a device past the table', () => {
  expect(errors('grounding', { breakerAmps: 40, metal: 'Cu', conductorNeeded: '8' })).toHaveProperty('conductor');
  expect(errors('grounding', { breakerAmps: 8000, metal: 'Cu' })).toHaveProperty('breakerAmps');
});

test('expansion refuses two materials and none', () => {
  const run = { length: 100, temperatureRangeC: 50 };
  expect(errors('expansion', run)).toHaveProperty('material');
  expect(errors('expansion', { ...run, material: 'PVC', metal: 'steel' })).toHaveProperty('material');
});

test('pulling names the segment that is wrong', () => {
  const segments = [...pull.segments, { kind: 'bend', angle: 90 }];
  expect(errors('pulling', { ...pull, segments })).toEqual({ 'segments[1].radius': 'missing' });
});

describe('reach', () => {
  test('is straight where nothing stands between: a 3-4-5 triangle twice over', () => {
    const { needed, planLength } = value('reach', { retractor: [0, 0, 9], inlet: [8, 0, 3], around: [] }) as never;
    expect([needed, planLength]).toEqual([10, 8]);
  });
  test('goes round a car in the way, hand-worked: by its corner at (3, 4)', () => {
    const around = [
      [
        [3, -9],
        [5, -9],
        [5, 4],
        [3, 4],
      ],
    ];
    const result = value('reach', { retractor: [0, 0, 5], inlet: [8, 0, 5], around }) as { needed: number };
    expect(result.needed).toBeCloseTo(5 + 2 + 5, 10);
  });
});

describe('cut', () => {
  test('lays pieces into the fewest sticks', () => {
    expect(value('cut', { stock: 10, pieces: [4, 5, 6] })).toMatchObject({ stocks: 2, bound: 2 });
  });
  test('names each piece that is longer than the stock', () => {
    expect(Object.keys(errors('cut', { stock: 10, pieces: [4, 11, 12] }))).toEqual(['pieces[1]', 'pieces[2]']);
  });
});

describe('phases', () => {
  test('lays three equal chargers on the three pairs: sqrt 3 of one on each line', () => {
    const result = value('phases', { amps: [32, 32, 32], connection: 'line-to-line' }) as { worstLineAmps: number };
    expect(result).toMatchObject({ assignment: ['AB', 'BC', 'CA'], legs: { AB: 32, BC: 32, CA: 32 } });
    expect(result.worstLineAmps).toBeCloseTo(32 * Math.sqrt(3), 10);
  });
  test('of no loads draws nothing', () => {
    expect(value('phases', { amps: [], connection: 'line-to-neutral' })).toMatchObject({
      assignment: [],
      worstLineAmps: 0,
      legs: { A: 0, B: 0, C: 0 },
    });
  });
});

describe('route', () => {
  test('costs what its paths carry, and no less than its bound', () => {
    const { cost, bound, paths } = value('route', square) as { cost: number; bound: number; paths: number[][] };
    expect(bound).toBeLessThanOrEqual(cost + 1e-9);
    expect(paths.map((path) => [path[0], path.at(-1)])).toEqual([
      [0, 2],
      [0, 2],
      [0, 3],
    ]);
    // Hand-worked: all three to 3 (10 x (2 + 3 + 2)) and two on to 2 (10 x (1 + 2 + 1)). Two by way of 1 would cost 120.
    expect(cost).toBe(110);
  });
  test('names nodes that are not there and terminals that cannot be reached', () => {
    expect(Object.keys(errors('route', { ...square, root: 9, terminals: [2, 7] }))).toEqual(['root', 'terminals[1]']);
    expect(errors('route', { ...square, nodes: 5, terminals: [4] })).toHaveProperty('terminals');
  });
});
