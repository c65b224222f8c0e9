import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { chargers, feeder, load, type Parts, panel, siteOf, source, supplied } from './small-site.ts';
import { behind, conductor, found } from './supply-findings-of.ts';

const oneFeeder = (
  count: number,
  rest: Parameters<typeof feeder>[2] = {},
  at: Parameters<typeof panel>[1] = {},
): Parts => ({
  equipment: [source(208), panel('P', at)],
  feeders: [feeder('SVC', 'P', rest)],
  chargers: chargers('P', count),
});

describe('findings of the supply', () => {
  test('a feeder carries continuous load up to 80% of its breaker: NEC 215.3', () => {
    // 7 chargers of 32 A: legs of 3, 2, 2 make 139.5 A; 9 make 166.3 A, and 200 / 1.25 is 160.
    expect(found(oneFeeder(7), 'feeder-overload')).toBeUndefined();
    const over = found(oneFeeder(9), 'feeder-overload')!;
    expect(over).toMatchObject({ severity: 'fail', about: ['F-P', 'P'], limit: 200, unit: 'A' });
    expect(over.value).toBeCloseTo(1.25 * 3 * 32 * Math.sqrt(3), 6);
    expect(over.says).toContain('160 A');
    expect(over.says).toContain('225 A feeder');
  });

  test('load management is a cure: its ceiling is what counts', () => {
    expect(found(oneFeeder(12, {}, { managedAmps: 160 }), 'feeder-overload')).toBeUndefined();
    expect(found(oneFeeder(12, {}, { managedAmps: 161 }), 'feeder-overload')).toBeDefined();
  });

  test('a breaker protects conductors up to the next standard rating: NEC 240.4(B)', () => {
    // 310.16 at 75 C: 4/0 copper 230 A, next rating 250 A; 3/0 200 A.
    expect(found(oneFeeder(3, { conductor: conductor('4/0'), breakerAmps: 250 }), 'feeder-conductor')).toBeUndefined();
    expect(found(oneFeeder(3, { conductor: conductor('4/0'), breakerAmps: 300 }), 'feeder-conductor')).toMatchObject({
      value: 300,
      limit: 250,
    });
    expect(found(oneFeeder(3, { conductor: conductor('3/0'), breakerAmps: 225 }), 'feeder-conductor')!.limit).toBe(200);
    expect(
      found(oneFeeder(3, { conductor: conductor('3/0', 2), breakerAmps: 400 }), 'feeder-conductor'),
    ).toBeUndefined();
  });

  test('a load between the ampacity and the next standard rating is too much for the conductors', () => {
    // 250 A breaker on 4/0 of 230 A: 11 chargers ask for 1.25 x 203.8 = 254.8 A, 10 for 243.3 A.
    const parts = oneFeeder(10, { conductor: conductor('4/0'), breakerAmps: 250 });
    const finding = found(parts, 'feeder-conductor')!;
    expect(finding.limit).toBe(230);
    expect(finding.value).toBeCloseTo(1.25 * 194.648, 2);
  });

  test('conductors in parallel are 1/0 or larger: NEC 310.10(G)', () => {
    expect(found(oneFeeder(1, { conductor: conductor('1', 2) }), 'parallel-size')).toMatchObject({ severity: 'fail' });
    expect(found(oneFeeder(1, { conductor: conductor('1/0', 2) }), 'parallel-size')).toBeUndefined();
  });

  test('a size that the tables lack is told, and its drop is not worked', () => {
    const parts = oneFeeder(3, { conductor: conductor('3-0') });
    expect(found(parts, 'feeder-size')).toMatchObject({ severity: 'fail' });
    expect(supplied(siteOf(parts)).supply.feeders[0]!.dropPercent).toBe(0);
  });

  test('a feeder without a length or a raceway to follow is told', () => {
    const { length: _, ...bare } = feeder('SVC', 'P');
    expect(found({ equipment: [source(208), panel('P')], feeders: [bare] }, 'no-feeder-route')).toMatchObject({
      severity: 'fail',
    });
  });

  test('a main is overloaded by its own load, and not told twice beside its feeder', () => {
    const parts = oneFeeder(7, {}, { mainAmps: 150 });
    expect(found(parts, 'main-overload')).toMatchObject({ about: ['P'], limit: 150 });
    const both = supplied(siteOf(oneFeeder(9, {}, { mainAmps: 200 }))).findings.map(({ rule }) => rule);
    expect(both.filter((rule) => rule.endsWith('-overload'))).toEqual(['feeder-overload']);
  });

  test('a busbar is protected at its rating: NEC 408.36', () => {
    expect(found(oneFeeder(3, {}, { busAmps: 125 }), 'bus-overload')).toMatchObject({ value: 200, limit: 125 });
    expect(found(oneFeeder(3, {}, { busAmps: 125, mainAmps: 125 }), 'bus-overload')).toBeUndefined();
    const bare: Parts = { equipment: [panel('P', { busAmps: 100 })], chargers: chargers('P', 6) };
    expect(found(bare, 'bus-overload')!.value).toBeCloseTo(1.25 * 2 * 32 * Math.sqrt(3), 6);
  });

  test('generation on a busbar: main and 125% of it within 120% of the bar: NEC 705.12', () => {
    const withPv = (va: number, count = 1): Parts => ({
      ...oneFeeder(count, {}, { busAmps: 225 }),
      loads: [load('P', 'PV', { volts: 208, phases: 3, va, generation: true })],
    });
    const back = (va: number): number => (1.25 * va) / (Math.sqrt(3) * 208);
    // 225 x 1.2 - 200 leaves 70 A, 20.2 kVA; up to 225 in all, 25 A, the place of the breaker does not matter.
    expect(found(withPv(7000), 'back-feed')).toBeUndefined();
    expect(found(withPv(15_000), 'back-feed')).toMatchObject({ severity: 'warn', limit: 225 });
    // One charger's 40 A and 90 A of the array are within the busbar together; five chargers' 200 A and those are not.
    expect(found(withPv(25_000), 'back-feed')).toMatchObject({ severity: 'warn', limit: 270 });
    const over = found(withPv(25_000, 5), 'back-feed')!;
    expect(over).toMatchObject({ severity: 'fail', limit: 270 });
    expect(over.value).toBeCloseTo(200 + back(25_000), 6);
  });

  test('generation behind a panel also comes back to what feeds it', () => {
    const parts: Parts = {
      equipment: [panel('M', { busAmps: 200, mainAmps: 200 }), panel('P'), panel('Q')],
      feeders: [feeder('M', 'P'), feeder('M', 'Q')],
      loads: [load('P', 'PV', { volts: 208, phases: 3, va: 20_000, generation: true })],
    };
    expect(found(parts, 'back-feed')).toMatchObject({ about: ['M'], severity: 'fail' });
  });

  test('small chargers count for 7200 VA in a load calculation: NEC 220.57', () => {
    // Nine of 32 A, 6656 VA at 208 V, ask for 207.8 A; of 7200 VA each for 224.8 A.
    const on = (breakerAmps: number): Parts => oneFeeder(9, { conductor: conductor('4/0'), breakerAmps });
    expect(found(on(225), 'unit-load')).toBeUndefined();
    expect(found(on(210), 'feeder-overload')).toBeUndefined();
    expect(found(on(210), 'unit-load')!.value).toBeCloseTo((1.25 * 3 * 7200 * Math.sqrt(3)) / 208, 6);
    expect(found(on(200), 'unit-load')).toBeUndefined();
    expect(found(on(200), 'feeder-overload')).toBeDefined();
  });

  test('spaces are counted a pole, and an order of lines that leaves no room is told apart', () => {
    expect(found(oneFeeder(7, {}, { spaces: 12 }), 'spaces-short')).toMatchObject({ value: 14, limit: 12 });
    expect(supplied(siteOf(oneFeeder(7, {}, { spaces: 30 }))).supply.equipment[1]!.spareSpaces).toBe(16);
    // Ten two-pole breakers in twenty spaces would have to be four AB, four CA and two BC.
    const full = oneFeeder(10, {}, { spaces: 20 });
    expect(found(full, 'spaces-short')).toBeUndefined();
    expect(found(full, 'spaces-order')).toMatchObject({ severity: 'warn' });
  });

  test('the total drop past its limit is one finding for each panel, the worst circuit first', () => {
    const parts = oneFeeder(9, { length: 400 });
    const finding = found(parts, 'total-drop')!;
    expect(finding).toMatchObject({ severity: 'fail', limit: 5, unit: '%' });
    expect(finding.about).toHaveLength(10);
    expect(finding.about.at(-1)).toBe('P');
    expect(found({ ...parts, rules: { dropLimit: { total: 12 } } }, 'total-drop')).toBeUndefined();
  });

  test('the finding on the total drop comes and goes with the branch that it is about', () => {
    const site = siteOf(oneFeeder(3));
    const told = (r: number): readonly string[] =>
      supplied(site, [], { r, x: 0.005 }).findings.flatMap(({ rule, about }) => (rule === 'total-drop' ? about : []));
    expect(told(0.05)).toEqual([]);
    expect(told(0.5)).toContain('EV-P-1');
    expect(told(0.05)).toEqual([]);
  });

  test.each([
    [240, 1, 208],
    [208, 1, 240],
    [208, 3, 480],
  ] as const)('chargers of %i V, %i-phase, on %i V equipment are told', (volts, phases, nominal) => {
    const parts: Parts = {
      equipment: [panel('P', { volts: nominal })],
      chargers: chargers('P', 2, { volts, phases }),
    };
    expect(found(parts, 'voltage-mismatch')).toMatchObject({
      severity: 'fail',
      about: ['EV-P-1', 'EV-P-2', 'P'],
      value: volts,
      limit: nominal,
    });
    expect(found({ ...parts, equipment: [panel('P', { volts })] }, 'voltage-mismatch')).toBeUndefined();
  });

  test('loads fit to neutral, across lines, or not at all', () => {
    const on = (volts: number, at: number, phases: 1 | 3 = 1): Finding | undefined =>
      found({ equipment: [panel('P', { volts: at })], loads: [load('P', 'L', { volts, phases })] }, 'voltage-mismatch');
    for (const [volts, at] of [
      [120, 208],
      [115, 208],
      [208, 208],
      [277, 480],
      [480, 480],
      [230, 240],
    ] as const)
      expect(on(volts, at)).toBeUndefined();
    for (const [volts, at] of [
      [240, 208],
      [120, 240],
      [120, 480],
      [277, 208],
    ] as const)
      expect(on(volts, at)).toBeDefined();
    expect(on(208, 208, 3)).toBeUndefined();
    expect(on(120, 208, 3)).toBeDefined();
  });

  test('management that leaves less than a pilot can call for is told', () => {
    expect(found(oneFeeder(12, {}, { managedAmps: 45 }), 'managed-floor')).toBeUndefined();
    const low = found(oneFeeder(12, {}, { managedAmps: 40 }), 'managed-floor')!;
    expect(low).toMatchObject({ severity: 'warn', about: ['P', 'EV-P-1'], limit: 6 });
    expect(low.value).toBeCloseTo(40 / (4 * Math.sqrt(3)), 6);
  });

  test('the greatest fault current is noted', () => {
    expect(found(behind(150, 200, 450), 'fault-current')).toMatchObject({ severity: 'note', about: ['T', 'P'] });
    expect(supplied(siteOf(oneFeeder(3))).findings.filter(({ rule }) => rule === 'fault-current')).toMatchObject([
      { about: ['P'] },
      { about: ['SVC'], says: expect.stringContaining('No figure is given') },
    ]);
  });

  test('a sound supply has no finding that fails', () => {
    const rated = { busAmps: 225, mainAmps: 200, spaces: 42, interruptingAmps: 22_000, electrode: 'rods' } as const;
    const parts = oneFeeder(6, {}, rated);
    const known = {
      ...parts,
      equipment: parts.equipment.map((one) => (one.id === 'SVC' ? { ...one, faultAmps: 20_000 } : one)),
    };
    expect(supplied(siteOf(known)).findings).toEqual([]);
  });
});
