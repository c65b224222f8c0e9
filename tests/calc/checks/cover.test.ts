import { describe, expect, test } from 'vitest';
import { coverFindings } from '../../../calc/checks/conduits/cover-findings.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Point3, Raceway, Stall } from '../../../routing/site/site.ts';

// NEC Table 300.5(A): 24 in under parking lots for every method; elsewhere 18 in for PVC and 6 in for RMC.
const buried = (depthInches: number, more: Partial<Raceway> = {}): Raceway => ({
  id: 'R1',
  path: [
    [0, 0, 2],
    [0, 0, -depthInches / 12],
    [60, 0, -depthInches / 12],
    [60, 0, 3],
  ],
  method: 'PVC40',
  place: 'underground',
  ...more,
});

const check = (raceways: readonly Raceway[], stalls: readonly Stall[] = []) =>
  coverFindings(raceways, stalls, [], NEC_2023, 'ft');

describe('cover over buried raceways', () => {
  test('is 24 in under a lot, whatever the raceway', () => {
    expect(check([buried(24)])).toEqual([]);
    for (const method of ['PVC40', 'PVC80', 'RMC', 'IMC', 'EMT'] as const)
      expect(check([buried(18, { method })])).toMatchObject([
        { severity: 'fail', rule: 'cover', about: ['R1'], value: 18, limit: 24, unit: 'in' },
      ]);
  });

  test('is less under soil: 18 in for PVC, 6 in for RMC', () => {
    expect(check([buried(18, { surface: 'soil' })])).toEqual([]);
    expect(check([buried(17, { surface: 'soil' })])).toMatchObject([{ value: 17, limit: 18 }]);
    expect(check([buried(6, { surface: 'soil', method: 'RMC' })])).toEqual([]);
  });

  test('is that of a lot again where a stall lies over the soil', () => {
    const stall = { id: 'S1', at: [30, -9], width: 9, depth: 18, heading: 90 } as const;
    expect(check([buried(18, { surface: 'soil' })], [stall])).toMatchObject([{ limit: 24 }]);
    expect(check([buried(18, { surface: 'soil' })], [{ ...stall, at: [30, 5] }])).toEqual([]);
  });

  test('a riser is passed over, a gentle slope out of the ground is not', () => {
    const path = (run: number): Point3[] => [
      [0, 0, -2],
      [40, 0, -2],
      [40 + run, 0, 1],
    ];
    expect(check([buried(24, { path: path(2.9) })])).toEqual([]);
    expect(check([buried(24, { path: path(30) })])).toMatchObject([{ value: -12, limit: 24 }]);
  });

  test('raceways above ground have none, and those that lie too shallow share a finding', () => {
    expect(check([buried(12, { place: 'surface' })])).toEqual([]);
    const [finding, ...others] = check([buried(20), buried(12, { id: 'R2' }), buried(30, { id: 'R3' })]);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ about: ['R2', 'R1'], value: 12 });
    expect(finding!.says).toContain('One more lies too shallow');
  });
});
