import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { disconnect } from '../../../calc/supply/panels/disconnect.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Equipment, Feeder, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { changed, lotAnd, lotChanged, lotWith, SMALL_LOT } from '../checks/faults/small-lot.ts';
import { chargers, equipment, feeder, panel, siteOf, source, supplied, transformer } from './small-site.ts';

const findingsOf = (site: ReturnType<typeof siteOf>, rule: string) =>
  supplied(site).findings.filter((finding) => finding.rule === rule);

describe('ground-fault protection of equipment', () => {
  const at480 = (amps: number, more: readonly Equipment[] = []) =>
    siteOf({
      equipment: [
        source(480),
        equipment('SE', 'service', { volts: 480, mainAmps: amps }),
        panel('P', { volts: 480, mainAmps: amps }),
        ...more,
      ],
      feeders: [
        feeder('SVC', 'SE', { breakerAmps: amps }),
        feeder('SE', 'P', { breakerAmps: amps }),
        ...more.map(({ id }) => feeder('P', id, { breakerAmps: amps })),
      ],
      chargers: chargers('P', 1, { volts: 480 }),
    });

  test('is asked for at 1,000 A of 480Y/277 V, once, at the service', () => {
    expect(findingsOf(at480(1000), 'ground-fault')).toMatchObject([
      { severity: 'warn', about: ['SE'], value: 1000, limit: 1000, source: 'NEC 2023 230.95' },
    ]);
    expect(findingsOf(at480(800), 'ground-fault')).toEqual([]);
  });

  test('a feeder behind a smaller service has it by itself', () => {
    const site = at480(800);
    const larger = {
      ...site,
      equipment: site.equipment.map((one) => (one.id === 'P' ? { ...one, mainAmps: 1000 } : one)),
    };
    expect(findingsOf(larger, 'ground-fault')).toMatchObject([{ about: ['P'], source: 'NEC 2023 215.10' }]);
  });

  test('behind a transformer another system begins: 208Y/120 V needs none, 480Y/277 V its own', () => {
    const behind = (secondaryVolts: number, primaryVolts: number) =>
      siteOf({
        equipment: [
          source(primaryVolts),
          equipment('SE', 'service', { volts: primaryVolts, mainAmps: 1200 }),
          transformer('T', { kva: 1000, primaryVolts, secondaryVolts }),
          panel('P', { volts: secondaryVolts, mainAmps: 1200 }),
        ],
        feeders: [
          feeder('SVC', 'SE', { breakerAmps: 1200 }),
          feeder('SE', 'T', { breakerAmps: 1200 }),
          feeder('T', 'P', { breakerAmps: 1200 }),
        ],
        chargers: chargers('P', 1, { volts: secondaryVolts }),
      });
    expect(findingsOf(behind(208, 480), 'ground-fault').map(({ about }) => about)).toEqual([['SE']]);
    // 240 V on the primary has no wye; what is behind it has.
    expect(findingsOf(behind(480, 240), 'ground-fault').map(({ about }) => about)).toEqual([['P']]);
  });
});

test('arc energy is spoken of at each device of 1,200 A and more, whatever the volts', () => {
  const site = (amps: number) =>
    siteOf({
      equipment: [source(208), panel('P', { mainAmps: amps })],
      feeders: [feeder('SVC', 'P', { breakerAmps: amps })],
      chargers: chargers('P', 1),
    });
  expect(findingsOf(site(1200), 'arc-energy')).toMatchObject([
    { about: ['P'], value: 1200, source: expect.stringContaining('240.87') },
  ]);
  expect(findingsOf(site(1000), 'arc-energy')).toEqual([]);
});

describe('what the file says that a device has', () => {
  const at480 = (main: Partial<Equipment>, into: Partial<Feeder> = {}) =>
    siteOf({
      equipment: [source(480), equipment('SE', 'service', { volts: 480, ...main })],
      feeders: [feeder('SVC', 'SE', { breakerAmps: 1600, ...into })],
      chargers: chargers('SE', 1, { volts: 480 }),
    });

  test('ground-fault protection that it has is not asked for, one that it has not is', () => {
    expect(findingsOf(at480({ mainAmps: 1600, groundFault: true }), 'ground-fault')).toEqual([]);
    expect(findingsOf(at480({ mainAmps: 1600, groundFault: false }), 'ground-fault')).toHaveLength(1);
    // Without a main the device of the feeder ends in it, and what it has counts.
    expect(findingsOf(at480({}, { groundFault: true }), 'ground-fault')).toEqual([]);
    expect(findingsOf(at480({}), 'ground-fault')).toHaveLength(1);
  });

  test.each([
    ['zone-interlocking', 0],
    ['differential', 0],
    ['maintenance-switch', 0],
    ['active-mitigation', 0],
    ['equivalent', 0],
    ['instantaneous-trip', 1],
    ['instantaneous-override', 1],
  ] as const)('%s answers for arc energy, with %s notes', (arcEnergy, notes) => {
    const found = findingsOf(at480({ mainAmps: 1600, arcEnergy }), 'arc-energy');
    expect(found.map(({ severity }) => severity)).toEqual(Array(notes).fill('note'));
    expect(findingsOf(at480({}, { arcEnergy }), 'arc-energy')).toHaveLength(notes);
  });

  test('stands with the device in the plan', () => {
    const { devices } = supplied(at480({ mainAmps: 1600, groundFault: true, arcEnergy: 'differential' })).facts;
    expect(devices).toMatchObject([{ id: 'SE.main', groundFault: true, arcEnergy: 'differential' }]);
  });
});

describe('series ratings', () => {
  /** 65 kA at the source, of which some 58 kA come to a board of 22 kA. */
  const rated = (more: Partial<Equipment>) =>
    siteOf({
      equipment: [{ ...source(480), faultAmps: 65_000 }, panel('P', { volts: 480, mainAmps: 400, ...more })],
      feeders: [feeder('SVC', 'P', { breakerAmps: 400, device: 'from', length: 5 })],
      chargers: chargers('P', 1, { volts: 480 }),
    });
  const own = { interruptingAmps: 22_000 } as const;
  const of = (more: Partial<Equipment>) => findingsOf(rated({ ...own, ...more }), 'interrupting-rating');

  test('a board below its fault current fails, with a tested combination it passes and is marked', () => {
    const [plain] = of({});
    expect(plain).toMatchObject({ severity: 'fail', limit: 22_000 });
    const [series, ...others] = of({ seriesAmps: 65_000, seriesWith: '400 A fused switch' });
    expect(others).toEqual([]);
    expect(series).toMatchObject({ severity: 'note', about: ['P'], limit: 65_000, source: 'NEC 2023 110.22, 240.86' });
    expect(series!.says).toContain('RATED 65000 AMPERES WITH 400 A FUSED SWITCH');
    expect(series!.says).toContain('400 A of F-P at SVC');
    expect(series!.says).toContain('1% of the lower rating');
  });

  test('too small a series rating fails, one that is not needed is not spoken of, one with no device named is looked at', () => {
    expect(of({ seriesAmps: 30_000, seriesWith: 'x' })).toMatchObject([{ severity: 'fail', limit: 30_000 }]);
    expect(of({ interruptingAmps: 65_000, seriesAmps: 65_000 })).toEqual([]);
    expect(of({ seriesAmps: 65_000 })).toMatchObject([{ severity: 'warn' }]);
  });
});

describe('disconnects of charging equipment', () => {
  test.each([
    [60, 208, 1, false],
    [60.5, 208, 1, true],
    [80, 240, 1, true],
    [32, 240, 1, false],
    [48, 208, 3, false],
    [32, 480, 3, true],
    [16, 277, 1, true],
    [32, 480, 1, true],
    [16, 120, 1, false],
    // Three-wire delta: no line is grounded, so that each may be the full voltage from it.
    [32, 240, 3, true],
  ] as const)('%s A at %s V, %s-phase: %s', (amps, volts, phases, needed) => {
    expect(disconnect(NEC_2023, { amps, volts, phases }).needed).toBe(needed);
  });

  const planned = (file: SiteFile) => plan(toSite(file));
  const told = (file: SiteFile) => planned(file).findings.filter(({ rule }) => rule === 'disconnect');

  test('a charger of 80 A has none drawn: it is told, and one is taken off at its rating', () => {
    const file = lotChanged('chargers', 'EV1', { amps: 80 });
    expect(told(file)).toMatchObject([{ severity: 'warn', about: ['EV1', 'P1'], value: 80, limit: 60, unit: 'A' }]);
    expect(planned(file).takeoff.find(({ item }) => item === 'disconnect')).toMatchObject({
      spec: '100 A 208 V, 2-pole, lockable',
      quantity: 1,
      of: ['EV1'],
    });
    expect(planned(SMALL_LOT).takeoff.some(({ item }) => item === 'disconnect')).toBe(false);
  });

  test('one of its own or a breaker that locks open is enough within sight', () => {
    const big = (charger: object, board: object = {}) =>
      lotWith({
        chargers: changed('chargers', 'EV1', { amps: 80, ...charger }),
        equipment: changed('equipment', 'P1', board),
      });
    const bought = (file: SiteFile) => planned(file).takeoff.some(({ item }) => item === 'disconnect');
    // Built in: nothing is bought. Some feet away: one is.
    expect([told(big({ disconnect: 0 })), bought(big({ disconnect: 0 }))]).toEqual([[], false]);
    expect([told(big({ disconnect: 12 })), bought(big({ disconnect: 12 }))]).toEqual([[], true]);
    expect(told(big({ disconnect: 51 }))).toMatchObject([{ severity: 'warn', about: ['EV1'], value: 51, limit: 50 }]);
    // The panel stands 17.5 ft from the box.
    expect([told(big({}, { lockable: true })), bought(big({}, { lockable: true }))]).toEqual([[], false]);
    expect(told(big({}, { lockable: false }))).toMatchObject([{ about: ['EV1', 'P1'] }]);
    const far = big({}, { lockable: true, at: [-60, 0] });
    expect(told(far)).toMatchObject([
      { about: ['EV1', 'P1', 'D1'], says: expect.stringContaining('The breaker in P1') },
    ]);
  });

  test('one that is drawn near by is enough, one out of sight wants a plaque', () => {
    const fed = (x: number) =>
      lotWith({
        ...lotAnd('equipment', [
          { id: 'DS1', kind: 'disconnect', at: [x, 0], size: [1, 1, 2], entry: [x, 0, 5], volts: 208, phases: 3 },
        ]),
        feeders: [...SMALL_LOT.feeders, { ...SMALL_LOT.feeders[0]!, id: 'F9', from: 'P1', to: 'DS1', length: 10 }],
        chargers: changed('chargers', 'EV1', { amps: 80, from: 'DS1' }),
      });
    expect(told(fed(20))).toEqual([]);
    // From the box at (9, 9) to (80, 0): sqrt(71² + 9²) = 71.57 ft.
    expect(told(fed(80))).toMatchObject([{ about: ['EV1', 'DS1', 'D1'], limit: 50, unit: 'ft' }]);
    expect(told(fed(80))[0]!.value).toBeCloseTo(71.568, 3);
    expect(planned(fed(80)).takeoff.filter(({ item }) => item === 'disconnect')).toMatchObject([{ of: ['DS1'] }]);
  });
});
