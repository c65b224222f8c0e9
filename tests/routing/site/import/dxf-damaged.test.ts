import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BUDGET } from '../../../../routing/site/import/imported.ts';
import { readDxf } from '../../../read-dxf.ts';
import { entities, line, sound } from './dxf-parts.ts';

function check(read: ReturnType<typeof readDxf>): void {
  if (!read.ok) {
    expect(read.fault.place).not.toBe('');
    expect(read.fault.says).not.toBe('');
    return;
  }
  expect(read.value.lines.length).toBeLessThanOrEqual(BUDGET.entities);
  for (const { points } of read.value.lines)
    for (const [x, y] of points) {
      expect(Math.abs(x)).toBeLessThanOrEqual(BUDGET.coordinate);
      expect(Math.abs(y)).toBeLessThanOrEqual(BUDGET.coordinate);
    }
}

describe('a DXF', () => {
  it('whose polyline has no end, or claims a billion vertices, is read to its end', () => {
    check(
      readDxf(
        entities(
          [0, 'POLYLINE'],
          [8, '0'],
          [0, 'VERTEX'],
          [10, 0],
          [20, 0],
          [0, 'VERTEX'],
          [10, 1],
          [20, 0],
          ...line(0, 0, 1, 1),
        ),
      ),
    );
    check(readDxf(entities([0, 'LWPOLYLINE'], [90, 1e9], [10, 0], [20, 0], [10, 5], [20, 5], [70, 1])));
  });

  it('with any of its lines changed, gone or doubled is read or refused, never more', () => {
    const lines = sound.split(/\r?\n/);
    const spoiled = fc.oneof(
      fc.constantFrom(
        '',
        '0',
        '-1',
        '1e400',
        'NaN',
        'SECTION',
        'ENDSEC',
        'INSERT',
        'BLOCK',
        'POLYLINE',
        'SPLINE',
        '999999999',
      ),
      fc.string(),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(lines.length - 1), fc.constantFrom('set', 'cut', 'twice'), spoiled), {
          minLength: 1,
          maxLength: 6,
        }),
        (changes) => {
          const now = [...lines];
          for (const [at, how, value] of changes) {
            if (how === 'set') now[at] = value;
            else if (how === 'cut') now.splice(at, 1 + (value.length % 3));
            else now.splice(at, 0, ...now.slice(at, at + 40));
          }
          check(readDxf(now.join('\n')));
        },
      ),
      { numRuns: 300 },
    );
  });
  it('made of any pairs of codes and values is read or refused, never more', () => {
    const kinds = [
      'LINE',
      'ARC',
      'CIRCLE',
      'ELLIPSE',
      'LWPOLYLINE',
      'POLYLINE',
      'VERTEX',
      'SEQEND',
      'SPLINE',
      'SOLID',
      'INSERT',
      'DIMENSION',
      'TEXT',
    ];
    const number = fc.oneof(
      fc.double().map(String),
      fc.integer({ min: -9, max: 9 }).map(String),
      fc.string({ maxLength: 4 }),
    );
    const pair = fc.oneof(
      fc.tuple(fc.constant(0), fc.constantFrom(...kinds)),
      fc.tuple(fc.constantFrom(2, 8, 10, 11, 12, 20, 21, 22, 40, 41, 42, 50, 51, 67, 70, 71, 210, 220, 230), number),
    );
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 80 }), (pairs) => check(readDxf(entities(...pairs)))),
      { numRuns: 500 },
    );
  });
});
