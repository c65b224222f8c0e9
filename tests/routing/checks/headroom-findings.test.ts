import { describe, expect, test } from 'vitest';
import type { AisleKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Drop, Point2, Point3 } from '../../../routing/site/site.ts';
import { charger, drop, stall } from '../reach/sites.ts';
import { found, only } from './reach-findings-of.ts';

describe('headroom', () => {
  const aisles = [
    {
      id: 'A1',
      outline: [
        [-50, -24],
        [50, -24],
        [50, 0],
        [-50, 0],
      ] as Point2[],
    },
  ];
  const over = (y: number, z: number): Drop[] => [drop('D1', [4.4, y, z], { cord: 60 })];

  test('of a box over an aisle is 13 ft 6 in, over a stall 7 ft, over a van stall 98 in', () => {
    expect(only(found('clear-height', { aisles, drops: over(-1, 11) }))).toMatchObject({
      severity: 'warn',
      about: ['D1', 'A1'],
      value: 11,
      limit: 13.5,
    });
    expect(found('clear-height', { aisles, drops: over(-1, 13.5) })).toEqual([]);
    expect(found('clear-height', { drops: over(9, 7.5) })).toEqual([]);
    expect(only(found('clear-height', { drops: over(9, 6.5) }))).toMatchObject({ severity: 'warn', limit: 7 });
    const stalls = [stall('S1', [0, 0], { use: 'van-accessible' })];
    expect(only(found('clear-height', { stalls, drops: over(9, 8) }))).toMatchObject({ severity: 'fail', limit: 8.17 });
  });

  test('over an access aisle is 98 in, of a raceway and of a box; over a walk 80 in; over a fire lane 13 ft 6 in', () => {
    const beside = (kind: AisleKind) => [{ ...aisles[0]!, kind }];
    const run = (z: number) =>
      raceway([
        [-20, -3, z],
        [20, -3, z],
      ]);
    // Raceway at 8 ft 0 in beside a van stall: 2 in under the 98 in of the standard; at 9 ft it is clear.
    const low = only(found('clear-height', { aisles: beside('access'), ...run(8) }));
    expect(low).toMatchObject({ severity: 'fail', about: ['R1', 'A1'], value: 8, limit: 8.17 });
    expect(low.says).toContain('over access aisle A1');
    expect(low.source).toContain('502.5');
    expect(found('clear-height', { aisles: beside('access'), ...run(9) })).toEqual([]);
    expect(only(found('clear-height', { aisles: beside('access'), drops: over(-1, 8) })).severity).toBe('fail');
    expect(found('clear-height', { aisles: beside('access'), drops: over(-1, 9) })).toEqual([]);

    expect(only(found('clear-height', { aisles: beside('walk'), ...run(6.5) }))).toMatchObject({
      severity: 'fail',
      limit: 6.67,
    });
    expect(found('clear-height', { aisles: beside('walk'), ...run(7) })).toEqual([]);
    expect(only(found('clear-height', { aisles: beside('fire'), ...run(13) }))).toMatchObject({
      severity: 'fail',
      limit: 13.5,
    });
    // Without a word an aisle is for driving, and 13 ft 6 in is asked about as before.
    expect(only(found('clear-height', { aisles, ...run(9) }))).toMatchObject({ severity: 'warn', limit: 13.5 });
  });

  test('is not asked of a pedestal or a wall', () => {
    expect(found('clear-height', { drops: [drop('D1', [4.4, 9, 4], { mount: 'pedestal' })] })).toEqual([]);
  });

  test('of the retractor counts as much as that of the box', () => {
    const drops = [drop('D1', [4.4, 9, 11], { retractor: [4.4, 9, 6] })];
    expect(only(found('clear-height', { drops })).says).toContain('retractor of D1');
  });

  const raceway = (path: Point3[], place: 'overhead' | 'surface' | 'underground' = 'overhead') => ({
    raceways: [{ id: 'R1', path, method: 'EMT' as const, place }],
  });

  test('of a raceway is that of its lowest part over the aisle, sloping or not', () => {
    const across: Point3[] = [
      [0, -30, 20],
      [0, 10, 10],
    ];
    // At y = 0 it is down to 12.5 ft; it leaves the aisle there.
    expect(only(found('clear-height', { aisles, ...raceway(across) }))).toMatchObject({
      about: ['R1', 'A1'],
      value: 12.5,
    });
    expect(found('clear-height', { aisles, ...raceway(across, 'surface') })).toEqual([]);
    expect(found('clear-height', raceway(across))).toEqual([]);
  });

  test('is not asked of a riser, nor along the edge of an aisle', () => {
    const riser: Point3[] = [
      [0, -5, 20],
      [0, -5, 0],
    ];
    expect(found('clear-height', { aisles, ...raceway(riser) })).toEqual([]);
    const edge: Point3[] = [
      [-20, 0, 11],
      [20, 0, 11],
    ];
    expect(found('clear-height', { aisles, ...raceway(edge) })).toEqual([]);
  });

  test('of a raceway over several stalls is one finding that names them all', () => {
    const stalls = [0, 1, 2].map((i) => stall(`S${i}`, [9 * i, 0]));
    const low: Point3[] = [
      [-10, 17, 6.5],
      [40, 17, 6.5],
    ];
    const finding = only(found('clear-height', { stalls, ...raceway(low), chargers: [charger('C1', 'D1', ['S0'])] }));
    expect(finding.about).toEqual(['R1', 'S0', 'S1', 'S2']);
  });
});
