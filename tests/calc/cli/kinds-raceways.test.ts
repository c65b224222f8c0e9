import { describe, expect, test } from 'vitest';
import { eights, errors, pull, value } from './kind-inputs.ts';

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

test('expansion refuses two materials and none', () => {
  const run = { length: 100, temperatureRangeC: 50 };
  expect(errors('expansion', run)).toHaveProperty('material');
  expect(errors('expansion', { ...run, material: 'PVC', metal: 'steel' })).toHaveProperty('material');
});

test('pulling names the segment that is wrong', () => {
  const segments = [...pull.segments, { kind: 'bend', angle: 90 }];
  expect(errors('pulling', { ...pull, segments })).toEqual({ 'segments[1].radius': 'missing' });
});
