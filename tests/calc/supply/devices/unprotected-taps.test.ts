import { describe, expect, test } from 'vitest';
import { whyFeeder } from '../../../../calc/why/why-supply.ts';
import type { Feeder } from '../../../../routing/site/site.ts';
import {
  chargers,
  equipment,
  feeder,
  type Parts,
  panel,
  siteOf,
  source,
  supplied,
  transformer,
} from '../small-site.ts';
import { behind, copper, told } from './unprotected-parts.ts';

describe('taps', () => {
  /** A tap of 3 AWG (100 A) from the bus of a 400 A switchboard. */
  const tapped = (out: Partial<Feeder>): Parts => ({
    equipment: [source(208), equipment('MSB', 'switchboard', { volts: 208, mainAmps: 400 }), panel('P1')],
    feeders: [
      feeder('SVC', 'MSB', { breakerAmps: 400, conductor: copper('500', 2) }),
      feeder('MSB', 'P1', { device: 'to', breakerAmps: 100, conductor: copper('3'), length: 8, ...out }),
    ],
    rules: { ambientC: 30 },
  });

  test('of 10 ft carry a tenth of the device ahead, of 25 ft a third', () => {
    expect(told(tapped({}), 'tap')).toEqual([]);
    // A third of 400 A is 133 A.
    expect(told(tapped({ length: 20 }), 'tap')).toMatchObject([
      { severity: 'fail', limit: 100, unit: 'A', source: 'NEC 2023 240.21(B)(2)' },
    ]);
    expect(told(tapped({ length: 20 }), 'tap')[0]!.value).toBeCloseTo(400 / 3, 9);
    expect(told(tapped({ length: 20, conductor: copper('1/0') }), 'tap')).toEqual([]);
  });

  test('are 25 ft at most, but outdoors; a feeder with its device where it starts is none', () => {
    const long = { length: 40, conductor: copper('1/0') };
    expect(told(tapped(long), 'tap')).toMatchObject([{ value: 40, limit: 25, unit: 'ft' }]);
    expect(told(tapped({ ...long, outdoors: true }), 'tap')).toEqual([]);
    expect(told(tapped({ ...long, device: 'from' }), 'tap')).toEqual([]);
  });

  test('the conductors of a service are none', () => {
    const parts = { equipment: [source(208), panel('P1')], feeders: [feeder('SVC', 'P1', { length: 200 })] };
    expect([...told(parts, 'tap'), ...told(parts, 'secondary')]).toEqual([]);
  });
});

describe('a transformer on a tap without a device', () => {
  /** 75 kVA tapped from a 200 A switchboard: 10 ft of 1/0 (150 A), then 10 ft of 4/0 (230 A) to a 225 A main. */
  const tapped = (into: Partial<Feeder> = {}, out: Partial<Feeder> = {}, board: object = {}): Parts => ({
    equipment: [
      source(480),
      equipment('MSB', 'switchboard', { volts: 480, mainAmps: 200 }),
      transformer('T1', { kva: 75 }),
      panel('P1', { busAmps: 400, mainAmps: 225, ...board }),
    ],
    feeders: [
      feeder('SVC', 'MSB', { breakerAmps: 200, conductor: copper('3/0') }),
      feeder('MSB', 'T1', { device: 'none', breakerAmps: 200, conductor: copper('1/0'), length: 10, ...into }),
      feeder('T1', 'P1', { breakerAmps: 225, conductor: copper('4/0'), length: 10, ...out }),
    ],
    chargers: chargers('P1', 3),
    rules: { ambientC: 30 },
  });
  const fails = (parts: Parts) =>
    ['tap', 'secondary'].flatMap((rule) =>
      told(parts, rule)
        .filter(({ severity }) => severity === 'fail')
        .map(({ source: from, value, limit }) => [from, value, limit]),
    );

  test('is right within 25 ft of both, a third of the device ahead on either side', () => {
    expect(fails(tapped())).toEqual([]);
    expect(told(tapped(), 'tap')).toEqual([]);
    // No device stands at either end of the tap, and it takes no space in the switchboard.
    const { devices } = supplied(siteOf(tapped())).facts;
    expect(devices.some(({ of }) => of === 'F-T1')).toBe(false);
    // 10 ft of 8 AWG (50 A) are less than a third of 200 A; 16 ft behind 10 ft are too long.
    expect(fails(tapped({ conductor: copper('8') }))).toEqual([
      ['NEC 2023 240.21(B)(3)', expect.closeTo(200 / 3, 9), 50],
    ]);
    expect(fails(tapped({}, { length: 16 }))).toEqual([['NEC 2023 240.21(C)(5)', 26, 25]]);
    // Of a tap that the device ahead protects, 3/0 with 200 A, nothing counts.
    expect(fails(tapped({ conductor: copper('3/0') }, { length: 16 }))).toEqual([]);
  });

  test('its rating is that of the device ahead, and where it says another that is told', () => {
    expect(told(tapped(), 'supply-data').filter(({ about }) => about[0] === 'F-T1')).toEqual([]);
    expect(told(tapped({ breakerAmps: 100 }), 'supply-data')).toMatchObject([
      { severity: 'warn', about: ['F-T1', 'MSB'], value: 100, limit: 200 },
    ]);
  });

  test('no other feeder goes without a device', () => {
    const parts = behind({ device: 'none' }, { mainAmps: 225 });
    expect(told(parts, 'tap')).toMatchObject([{ severity: 'fail', about: ['F-P1', 'T1', 'P1'] }]);
  });

  test('the steps of tap and secondary name their rules', () => {
    const steps = (id: string) => whyFeeder(siteOf(tapped()), id).map(({ find }) => find);
    expect(steps('F-T1')).toContain('asked by 240.21(B)(3)');
    expect(steps('F-P1')).toContain('asked by 240.21(C)(5)');
  });
});

test('a tap in a high bay runs 25 ft on the level and as far again up', () => {
  const bay = (out: Partial<Feeder>, along = 20): Parts => {
    const high: readonly [number, number, number][] = [
      [0, 0, 32],
      [along, 0, 32],
      [along, 0, 4],
    ];
    return {
      equipment: [
        source(208),
        { ...equipment('MSB', 'switchboard', { volts: 208, mainAmps: 400 }), at: [0, 0], entry: [0, 0, 32] },
        { ...panel('P1'), at: [along, 0], entry: [along, 0, 4] },
      ],
      feeders: [
        feeder('SVC', 'MSB', { breakerAmps: 400, conductor: copper('500', 2) }),
        {
          id: 'F-P1',
          from: 'MSB',
          to: 'P1',
          device: 'to',
          breakerAmps: 150,
          conductor: copper('1/0'),
          tapCondition: 'high-bay',
          ...out,
        },
      ],
      raceways: [{ id: 'R1', path: high, method: 'EMT', place: 'surface' }],
      rules: { ambientC: 30 },
    };
  };
  expect(told(bay({}), 'tap')).toEqual([]);
  expect(told(bay({}, 26), 'tap')).toMatchObject([
    { value: 26, limit: 25, unit: 'ft', source: 'NEC 2023 240.21(B)(4)' },
  ]);
  // Of a length alone it is not known how much of it is level, and that is said.
  expect(told(bay({ length: 60 }), 'tap')).toMatchObject([{ severity: 'warn' }]);
});
