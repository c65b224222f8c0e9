import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { managedLot as lot } from './managed-lot.ts';

const day = (file: SiteFile) => plan(toSite(file)).days[0]!;
const limits = (file: SiteFile) => Object.fromEntries(day(file).limits.map(({ id, ...rest }) => [id, rest]));

describe('limits of a day as the supply has them', () => {
  test('management as it stands, 80% of breakers and mains, a transformer’s amperes, a delta primary by its ratio', () => {
    const found = limits(lot());
    expect(Object.keys(found).sort()).toEqual(['F1 breaker', 'F2 breaker', 'P1', 'P1 main', 'T1 75 kVA']);
    expect(found.P1).toMatchObject({ kind: 'lines', amps: 90, chargers: ['EV1', 'EV2'] });
    expect(found['P1 main']).toMatchObject({ kind: 'lines', amps: 160 });
    expect(found['F2 breaker']).toMatchObject({ kind: 'lines', amps: 180 });
    // 75,000 / (1.732 x 208) = 208.2 A; 480 to 120 V to ground is 4 to 1.
    expect(found['T1 75 kVA']!.amps).toBeCloseTo(208.2, 1);
    expect(found['F1 breaker']).toMatchObject({ kind: 'delta', amps: 80 });
    expect(found['F1 breaker']!.ratio).toBeCloseTo(480 / (208 / Math.sqrt(3)), 9);
  });

  test('loads beside the chargers are taken off line by line: continuous whole, others at 80%', () => {
    const load = { from: 'P1', volts: 208, phases: 3 as const, name: 'x' };
    const va = 10 * 208 * Math.sqrt(3);
    const both = [
      { ...load, id: 'L1', va, continuous: true },
      { ...load, id: 'L2', va, continuous: false },
    ];
    const [other] = limits(lot({ loads: both }))['P1 main']!.other!;
    expect(other).toMatchObject({ from: '00:00', to: '00:00' });
    for (const line of ['A', 'B', 'C'] as const) expect(other![line]).toBeCloseTo(10 + 8, 9);
    // On the delta primary three-phase amperes come down by 208 to 480.
    const [primary] = limits(lot({ loads: both }))['F1 breaker']!.other!;
    expect(primary!.A).toBeCloseTo((18 * 208) / 480, 9);
  });

  test('equal shares where anything is managed, no management where nothing is', () => {
    expect(day(lot()).strategy).toBe('equal');
    const bare = lot();
    const { managedAmps: _, ...panel } = bare.equipment![2]! as { managedAmps: number };
    expect(day({ ...bare, equipment: [...bare.equipment!.slice(0, 2), panel as never] }).strategy).toBe('unmanaged');
  });

  test('behind two transformers a limit is not read, and it is told', () => {
    const two = lot();
    const [at, conductor] = [{ size: [3, 1, 6], entry: [0, 0, 6] }, two.feeders![0]!.conductor];
    const equipment = [
      { id: 'U', kind: 'source', at: [-6, 0], ...at, volts: 4160, phases: 3 } as never,
      {
        id: 'T0',
        kind: 'transformer',
        at: [-3, 0],
        ...at,
        kva: 300,
        primaryVolts: 4160,
        secondaryVolts: 480,
        phases: 3,
      } as never,
      ...two.equipment!.slice(1),
    ];
    const feeders = [
      { id: 'F0', from: 'U', to: 'T0', conductor, breakerAmps: 60, length: 50 },
      { ...two.feeders![0]!, from: 'T0' },
      two.feeders![1]!,
    ];
    const found = day({ ...two, equipment, feeders });
    expect(found.limits.map(({ id }) => id)).not.toContain('F0 breaker');
    expect(
      found.findings.some(({ says }) => says.includes('F0 breaker: its chargers lie behind two transformers')),
    ).toBe(true);
  });

  test('a day that names what is not there is told with its place, and the rest of the plan stands', () => {
    const wrong = lot({
      days: [{ ...lot().days![0]!, cars: [{ arrive: '08:00', leave: '09:00', kwh: 1, charger: 'EV9' }] }],
    });
    expect(day(wrong).findings).toMatchObject([{ severity: 'fail', rule: 'charging-day' }]);
    expect(day(wrong).findings[0]!.says).toContain('cars[0].charger: there is no charger "EV9"');
    expect(plan(toSite(wrong)).runs).toHaveLength(2);
  });

  test('who leaves short is told with the charger and by how much, and days stay the same objects when a drop moves', () => {
    const tight = lot({
      days: [{ ...lot().days![0]!, limits: [{ id: 'P1', kind: 'lines', amps: 8 }] }],
    });
    const planned = plan(toSite(tight));
    // 8 A for nine hours at 208 V: 14.976 of 20 kWh.
    expect(planned.days[0]!.strategies.equal!.got[0]).toBeCloseTo(14.976, 9);
    expect(planned.findings.find(({ rule }) => rule === 'charging-day')!.says).toContain('worst at EV1 by 5.0 kWh');
    const moved = plan(toSite({ ...tight, drops: [{ ...tight.drops![0]!, box: [0, 17, 10] }] }));
    expect(moved.days[0]).toBe(planned.days[0]);
  });
});
