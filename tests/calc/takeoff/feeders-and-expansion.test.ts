import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { panel } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';

const rowsOf = (file: SiteFile, item: string): [string, number][] =>
  plan(toSite(file))
    .takeoff.filter((row) => row.item === item)
    .map(({ spec, quantity }) => [spec, Number(quantity.toFixed(6))]);

type NewFeeder = NonNullable<SiteFile['feeders']>[number];

const fed = (feeder: Partial<NewFeeder> = {}, to: Partial<ReturnType<typeof panel>> = {}): SiteFile =>
  trunkLot([20], {
    equipment: [panel('SVC', [-50, 0, 10], { kind: 'source' }), panel('P1', [0, 0, 10], to)],
    feeders: [
      {
        id: 'F1',
        from: 'SVC',
        to: 'P1',
        conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'THWN-2' },
        raceway: 'EMT',
        length: 100,
        breakerAmps: 200,
        ...feeder,
      },
    ],
  });

describe('a new feeder', () => {
  test('is three lines and a neutral of 208Y/120, with 5 ft at both ends and waste', () => {
    expect(rowsOf(fed(), 'feeder conductor')).toEqual([['3/0 AWG copper THWN-2', 4 * 110 * 1.05]]);
  });

  test('has the grounding conductor of its breaker (250.122: 200 A, 6 AWG) and a raceway that holds all', () => {
    expect(rowsOf(fed(), 'feeder grounding conductor')).toEqual([['6 AWG copper THWN-2', 115.5]]);
    // 4 x 0.2679 + 0.0507 = 1.1223 in²: over 0.814 of 1-1/2 EMT at 40%, under 1.342 of 2 in. (Chapter 9 Tables 4, 5).
    expect(rowsOf(fed(), 'feeder raceway')).toEqual([['EMT 2 in', 105]]);
  });

  test('has everything once for each set', () => {
    const conductor = { size: '3/0', metal: 'copper', sets: 2, insulation: 'THWN-2' } as const;
    expect(rowsOf(fed({ conductor }), 'feeder conductor')[0]![1]).toBeCloseTo(2 * 4 * 110 * 1.05, 9);
    expect(rowsOf(fed({ conductor }), 'feeder grounding conductor')[0]![1]).toBeCloseTo(2 * 115.5, 9);
    expect(rowsOf(fed({ conductor }), 'feeder raceway')[0]![1]).toBeCloseTo(210, 9);
  });

  test('to the delta of a transformer has no neutral', () => {
    const file = fed({}, { kind: 'transformer', primaryVolts: 208, secondaryVolts: 208, kva: 45 });
    expect(rowsOf(file, 'feeder conductor')[0]![1]).toBeCloseTo(3 * 110 * 1.05, 9);
  });

  test('that exists is not bought', () => {
    for (const item of ['feeder conductor', 'feeder grounding conductor', 'feeder raceway'])
      expect(rowsOf(fed({ existing: true }), item)).toEqual([]);
  });

  test('that fits no raceway is a finding', () => {
    const conductor = { size: '1000', metal: 'copper', sets: 1, insulation: 'THWN-2' } as const;
    const { findings } = plan(toSite(fed({ conductor, raceway: 'LFMC', breakerAmps: 600 })));
    // 4 x 1.3478 and a 1 AWG, 5.547 in²: 40% of 4 in. LFMC is 4.978 (from memory of Table 4).
    expect(findings.filter(({ rule }) => rule === 'conduit-fill').map(({ about }) => about)).toEqual([['F1']]);
  });
});

describe('expansion fittings', () => {
  const lot = (place: 'overhead' | 'underground', rules: SiteFile['rules'] = {}): SiteFile =>
    trunkLot([100], {
      raceways: [
        {
          id: 'R1',
          path: [
            [0, 0, 10],
            [100, 0, 10],
          ],
          method: 'PVC40',
          place,
        },
      ],
      rules,
    });

  test('100 ft of exposed PVC over 100 F moves 4.06 in: two of 4 in each (352.44)', () => {
    expect(rowsOf(lot('overhead', { temperatureRangeC: 100 / 1.8 }), 'expansion fitting')).toEqual([
      ['PVC40 1/2 in', 2],
    ]);
    expect(rowsOf(lot('overhead', { temperatureRangeC: 90 / 1.8 }), 'expansion fitting')).toEqual([
      ['PVC40 1/2 in', 1],
    ]);
  });

  test('underground there are none, nor where nothing changes temperature, nor in steel', () => {
    expect(rowsOf(lot('underground'), 'expansion fitting')).toEqual([]);
    expect(rowsOf(lot('overhead', { temperatureRangeC: 0 }), 'expansion fitting')).toEqual([]);
    expect(rowsOf(trunkLot([100]), 'expansion fitting')).toEqual([]);
  });

  test('a straight that moves less than 1/4 in needs none: 6.1 ft over 100 F', () => {
    const short = (feet: number): SiteFile =>
      trunkLot([feet], {
        raceways: [
          {
            id: 'R1',
            path: [
              [0, 0, 10],
              [feet, 0, 10],
            ],
            method: 'PVC40',
            place: 'overhead',
          },
        ],
        rules: { temperatureRangeC: 100 / 1.8 },
      });
    expect(rowsOf(short(6.1), 'expansion fitting')).toEqual([]);
    expect(rowsOf(short(6.2), 'expansion fitting')).toEqual([['PVC40 1/2 in', 1]]);
  });
});
