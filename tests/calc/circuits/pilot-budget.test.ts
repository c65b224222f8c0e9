import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';

const planOf = (file: SiteFile): Plan => plan(toSite(file));

describe('the pilot budget', () => {
  const lot = (feet: number, cord: number): SiteFile =>
    trunkLot([feet], {
      drops: [{ id: 'D1', box: [feet, 0, 10], cord }],
      chargers: [charger('C1', 'D1', 'P1', { pilot: true })],
      rules: {
        pilot: {
          sourcePicofarads: 300,
          cordPicofaradsPerFoot: 30,
          branchPicofaradsPerFoot: 30,
          budgetPicofarads: 3100,
        },
      },
    });
  const finding = (feet: number, cord: number) =>
    planOf(lot(feet, cord)).findings.find(({ rule }) => rule === 'pilot-budget');

  test('allows (3100 - 300 - 30 x 25) / 30 = 68.33 ft of branch behind a 25 ft cord', () => {
    // Hand computation on the budget of IEC 61851-1 Annex A.
    expect(finding(63, 25)).toMatchObject({ severity: 'warn', value: 69, unit: 'ft', about: ['C1', 'P1'] });
    expect(finding(63, 25)!.limit).toBeCloseTo(68.3333, 4);
    expect(finding(62, 25)).toBeUndefined();
  });

  test('is not asked where no pilot is carried', () => {
    const file = { ...lot(200, 25), chargers: [charger('C1', 'D1', 'P1')] };
    expect(planOf(file).findings.some(({ rule }) => rule === 'pilot-budget')).toBe(false);
  });
});
