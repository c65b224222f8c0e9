import { describe, expect, test } from 'vitest';
import type { Equipment, Load } from '../../../routing/site/site.ts';
import { chargers, feeder, load, panel, siteOf, source, supplied } from './small-site.ts';

const BACK = 'back-feed';

/** A panel of 200 A, fed by 200 A, with so many amperes of generation on it. */
const withInverter = (
  amps: number,
  more: { rest?: Partial<Equipment>; breaker?: number; count?: number; first?: boolean } = {},
) => {
  const { rest = {}, breaker = 200, count = 0 } = more;
  const va = amps * 208 * Math.sqrt(3);
  const array: Load = load('P', 'PV', { va, phases: 3, volts: 208, generation: true });
  const site = siteOf({
    equipment: [source(208), panel('P', { busAmps: 200, mainAmps: breaker, ...rest })],
    feeders: [feeder('SVC', 'P', { breakerAmps: breaker })],
    chargers: chargers('P', count),
    loads: [array],
  });
  return supplied(site).findings.filter(({ rule }) => rule === BACK);
};

describe('busbars that generation feeds, by each way of the code', () => {
  test('the sum: 160 A of device and 125% of 32 A are the 200 A of the busbar', () => {
    expect(withInverter(32, { breaker: 160 })).toEqual([]);
  });

  // Several public pages on the rule: a 200 A busbar behind a 200 A main may have a 40 A breaker, so 32 A of inverter.
  test('120% from opposite ends: 32 A of inverter beside a main of 200 A, and no more', () => {
    const [just] = withInverter(32, { count: 14 });
    expect(just).toMatchObject({ severity: 'warn', limit: 200 });
    expect(just!.value).toBeCloseTo(240, 6);
    expect(withInverter(32.1, { count: 14 })).toMatchObject([{ severity: 'fail', limit: 240 }]);
  });

  test('where the schedule has its breaker at the end, that is a note; elsewhere, a warning that says where', () => {
    // Chargers that were issued at the top leave the foot of the panel to the array.
    const issued = {
      circuits: {
        'EV-P-1': { panel: 'P', spaces: [1, 3], phases: 'AB' },
        'EV-P-2': { panel: 'P', spaces: [2, 4], phases: 'AB' },
      },
    };
    const parts = {
      equipment: [source(208), panel('P', { busAmps: 200, mainAmps: 200, spaces: 10 })],
      feeders: [feeder('SVC', 'P', { breakerAmps: 200 })],
      chargers: chargers('P', 2),
      loads: [load('P', 'PV', { va: 32 * 208, volts: 208, generation: true })],
      issued,
    };
    const [far] = supplied(siteOf(parts)).findings.filter(({ rule }) => rule === BACK);
    expect(far).toMatchObject({ severity: 'note' });
    expect(far!.says).toContain('has it there (PV in 7, 9)');
    const site = siteOf({
      equipment: [source(208), panel('P', { busAmps: 200, mainAmps: 200, spaces: 42 })],
      feeders: [feeder('SVC', 'P', { breakerAmps: 200 })],
      loads: [
        load('P', 'PV', { va: 32 * 208 * Math.sqrt(3), phases: 3, volts: 208, generation: true }),
        load('P', 'L', { va: 2000, phases: 3, volts: 208 }),
      ],
    });
    const [among] = supplied(site).findings.filter(({ rule }) => rule === BACK);
    expect(among).toMatchObject({ severity: 'warn' });
    expect(among!.says).toContain('has it elsewhere');
  });

  test('the sum of the breakers: an 80 A breaker of the array and three of 40 A are the 200 A busbar', () => {
    // 200 + 1.25 x 60 = 275 A is over 240 A; 80 + 3 x 40 = 200 A is not over 200 A.
    expect(withInverter(60, { count: 3 })).toMatchObject([{ severity: 'warn', limit: 240 }]);
    expect(withInverter(60, { count: 3 })[0]!.says).toContain('come to 200 A');
    expect(withInverter(60, { count: 4 })).toMatchObject([{ severity: 'fail' }]);
  });

  test('generation behind another panel counts at each busbar on its way, by the breaker that it comes in by', () => {
    const site = siteOf({
      equipment: [source(208), panel('M', { busAmps: 200, mainAmps: 200, spaces: 12 }), panel('S', { busAmps: 400 })],
      feeders: [feeder('SVC', 'M', { breakerAmps: 200 }), feeder('M', 'S', { breakerAmps: 100 })],
      loads: [load('S', 'PV', { va: 30 * 208 * Math.sqrt(3), phases: 3, volts: 208, generation: true })],
    });
    const found = supplied(site).findings.filter(({ rule }) => rule === BACK);
    expect(found).toMatchObject([{ about: ['M'], severity: 'warn' }]);
    // 200 A and 37.5 A; the one breaker on the busbar is the feeder's.
    expect(found[0]!.value).toBeCloseTo(237.5, 6);
    expect(found[0]!.says).toContain('F-S in 1, 3, 5');
    expect(found[0]!.says).toContain('come to 100 A');
  });
});
