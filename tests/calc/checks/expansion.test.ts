import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Method, Place } from '../../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { trunkLot } from '../branches/lots.ts';

const lot = (feet: number, method: Method, place: Place = 'overhead', rangeF = 100): SiteFile =>
  trunkLot([feet], {
    raceways: [
      {
        id: 'R1',
        path: [
          [0, 0, 10],
          [feet, 0, 10],
        ],
        method,
        place,
      },
    ],
    rules: { temperatureRangeC: rangeF / 1.8 },
  });

const found = (file: SiteFile) => plan(toSite(file)).findings.filter(({ rule }) => rule === 'expansion');

describe('expansion of exposed straights', () => {
  // PVC 3.38e-5 in/in/F (Table 352.44): 100 ft over 100 F is 4.056 in; 1/4 in is reached at 6.16 ft.
  test('of PVC is noted from 1/4 in on, with how much', () => {
    const [finding, ...others] = found(lot(100, 'PVC40'));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'note', limit: 0.25, unit: 'in' });
    expect(finding!.value).toBeCloseTo(4.056, 9);
    expect(finding!.about).toContain('R1');
    expect(found(lot(6.2, 'PVC80'))).toHaveLength(1);
    expect(found(lot(6.1, 'PVC80'))).toEqual([]);
  });

  // Steel 6.5e-6 in/in/F (300.7(B)): 100 ft over 100 F is 0.78 in, 130 ft 1.014.
  test('of steel is noted from 1 in on', () => {
    expect(found(lot(100, 'EMT'))).toEqual([]);
    expect(found(lot(130, 'RMC'))[0]!.value).toBeCloseTo(1.014, 9);
  });

  test('is none underground, in flexible raceway, or where it is always as warm', () => {
    expect(found(lot(100, 'PVC40', 'underground'))).toEqual([]);
    expect(found(lot(100, 'LFMC'))).toEqual([]);
    expect(found(lot(100, 'PVC40', 'overhead', 0))).toEqual([]);
  });

  test('is noted exactly where the takeoff counts expansion fittings', () => {
    for (const feet of [3, 6.1, 6.2, 40, 180])
      for (const method of ['PVC40', 'EMT', 'LFMC'] as const) {
        const { findings, takeoff } = plan(toSite(lot(feet, method)));
        const counted = takeoff.some(({ item }) => item === 'expansion fitting');
        expect(findings.some(({ rule, limit }) => rule === 'expansion' && limit === 0.25)).toBe(counted);
      }
  });
});
