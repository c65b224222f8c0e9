import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { lotAnd, lotWith, SMALL_LOT } from './faults/small-lot.ts';

/** A raceway in the ground that comes up at a place; stall S1 is from x 0 to 9, y 0 to 18. */
const risingAt = (x: number, y: number, method: Method = 'PVC40') =>
  lotAnd('raceways', [
    {
      id: 'R9',
      path: [
        [-30, y, -2],
        [x, y, -2],
        [x, y, 3],
      ],
      method,
      place: 'underground',
    },
  ]);
const told = (file: Parameters<typeof toSite>[0], rule: string) =>
  plan(toSite(file)).findings.filter((finding) => finding.rule === rule);

describe('raceways that come out of the ground beside cars', () => {
  test.each([
    ['in a stall', 4, 9, 0],
    ['two feet from one', -2, 9, 2],
  ] as const)('PVC40 %s is told', (_, x, y, away) => {
    const [finding] = told(risingAt(x, y), 'riser');
    expect(finding).toMatchObject({ severity: 'warn', about: ['R9'], limit: 3, unit: 'ft' });
    expect(finding!.value).toBeCloseTo(away, 9);
    expect(finding!.source).toContain('300.5(D)(4)');
  });

  test.each(['PVC80', 'RMC', 'IMC', 'EMT'] as const)('%s is made for it', (method) => {
    expect(told(risingAt(4, 9, method), 'riser')).toEqual([]);
  });

  test('away from cars, and inside of equipment, it is no matter', () => {
    expect(told(risingAt(-4, 9), 'riser')).toEqual([]);
    // Equipment that stands in a stall guards what comes up in it.
    const guarded = lotWith({
      ...risingAt(4, 9),
      equipment: [
        ...SMALL_LOT.equipment,
        { id: 'DS9', kind: 'disconnect', at: [4, 9], size: [2, 2, 4], entry: [4, 9, 1], volts: 208, phases: 3 },
      ],
    });
    expect(told(guarded, 'riser')).toEqual([]);
  });
});

test('insulation for dry places alone fails, for a raceway outdoors is wet inside', () => {
  const dry = lotWith({ rules: { insulation: 'THHN' } });
  expect(told(dry, 'wet-insulation')).toMatchObject([{ severity: 'fail' }]);
  expect(told(dry, 'sound')).toEqual([]);
  expect(told(lotWith({ rules: { insulation: 'XHHW' } }), 'wet-insulation')).toEqual([]);
});

test('boxes and couplings are taken off as what wet places ask for', () => {
  const { takeoff } = plan(toSite(SMALL_LOT));
  expect(takeoff.find(({ item }) => item === 'junction box')!.basis).toContain('wet places (314.15)');
  expect(takeoff.find(({ item }) => item === 'connector')!.basis).toContain('raintight');
});
