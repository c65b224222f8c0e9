import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explained } from '../../../calc/words/explain.ts';
import { ALL, calc, drop, dropWithoutLength, duty, eights, errors, pull, square, unit, value } from './kind-inputs.ts';

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
  [
    'fault',
    {
      steps: [
        { kind: 'source', volts: 480, faultAmps: 20_000 },
        {
          kind: 'conductor',
          length: 100,
          volts: 480,
          phases: 3,
          conductor: { size: '500', metal: 'copper' },
          raceway: 'steel',
        },
      ],
      method: 'point-to-point',
    },
    ['places'],
  ],
  [
    'secondary',
    {
      conductor: { size: '4/0', metal: 'copper' },
      length: 9,
      deviceAmps: 225,
      primaryAmps: 125,
      primaryVolts: 480,
      secondaryVolts: 208,
    },
    ['ok', 'asks'],
  ],
  [
    'tap',
    { conductor: { size: '1/0', metal: 'copper' }, length: 20, deviceAmps: 150, feederAmps: 400 },
    ['ok', 'asks'],
  ],
  ['working-space', { voltsToGround: 277, condition: 2 }, ['depth']],
  [
    'hung',
    { member: { from: [0, 0, 10], to: [20, 0, 10] }, loads: [{ at: 5, pounds: 40 }] },
    ['reactions', 'moment', 'at'],
  ],
  [
    'load',
    { volts: 208, phases: 3, chargers: [{ count: 6, amps: 32 }], ratingAmps: 400 },
    ['chargers', 'cases', 'decides', 'designAmps', 'fits', 'spareAmps', 'transformerKva'],
  ],
  ['disconnect', { amps: 80, volts: 208, phases: 1 }, ['needed', 'says']],
  ['cord', { amps: 32, volts: 208, phases: 1, length: 25 }, ['size', 'ampacity', 'fits', 'dropVolts', 'dropPercent']],
  [
    'charge',
    {
      from: '08:00',
      to: '12:00',
      step: 60,
      chargers: [{ id: 'A', lines: 'AB', amps: 32, volts: 208 }],
      limits: [{ id: 'L', kind: 'sum', amps: 20 }],
      cars: [{ arrive: '08:00', leave: '12:00', kwh: 12, charger: 'A' }],
    },
    ['cars', 'strategies', 'optimum'],
  ],
];

test('no kind goes without a sound input here', () => {
  expect(SOUND.map(([kind]) => kind).sort()).toEqual([...ALL.keys()].sort());
});

describe.each(SOUND)('%s', (kind, input, fields) => {
  test('answers with the fields of the contract', () => {
    expect(Object.keys(value(kind, input)).sort()).toEqual([...fields].sort());
  });
  test('explains itself with the same answer, and each step has a source', () => {
    const { result, steps } = explained((tell) => ALL.get(kind)?.(input, tell));
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
