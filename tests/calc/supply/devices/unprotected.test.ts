import { describe, expect, test } from 'vitest';
import { whyFeeder } from '../../../../calc/why/why-supply.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
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

describe('conductors of a secondary', () => {
  test('20 ft that end in a device within what they carry are right', () => {
    expect(told(behind({}, { mainAmps: 225 }), 'secondary')).toEqual([]);
    expect(told(behind({}, { mainAmps: 225 }), 'feeder-conductor')).toEqual([]);
  });

  test('have no next rating up: 250 A on the 230 A of 4/0', () => {
    const parts = behind({ breakerAmps: 250 }, { mainAmps: 250 });
    expect(told(parts, 'secondary')).toMatchObject([
      { severity: 'fail', value: 250, limit: 230, unit: 'A', source: 'NEC 2023 240.21(C)(6)' },
    ]);
    // With the device where they start the next rating up is for them, as for any feeder.
    expect(told(behind({ breakerAmps: 250, device: 'from' }, { mainAmps: 250 }), 'secondary')).toEqual([]);
    expect(told(behind({ breakerAmps: 300, device: 'from' }, { mainAmps: 300 }), 'feeder-conductor')).toHaveLength(1);
  });

  test('80 ft are too long, unless they lie outdoors or start with a device', () => {
    const over = (rest: Partial<Feeder> = {}) => told(behind({ length: 80, ...rest }, { mainAmps: 225 }), 'secondary');
    expect(over()).toMatchObject([
      {
        severity: 'fail',
        about: ['F-P1', 'T1', 'P1'],
        value: 80,
        limit: 25,
        unit: 'ft',
        source: 'NEC 2023 240.21(C)(6)',
      },
    ]);
    expect(over({ outdoors: true })).toEqual([]);
    expect(over({ device: 'from' })).toEqual([]);
    expect(over({ device: 'both' })).toEqual([]);
  });

  test('in the ground all the way they are outdoors; with a stretch on a wall they are not known to be', () => {
    const along = (place: 'underground' | 'surface') => {
      const parts = behind({}, { mainAmps: 225 });
      const [svc, t1, p1] = parts.equipment;
      const { length: _, raceway: __, ...out } = parts.feeders![1]!;
      return told(
        {
          ...parts,
          equipment: [svc!, { ...t1!, at: [0, 0], entry: [0, 0, -2] }, { ...p1!, at: [60, 0], entry: [60, 0, -2] }],
          feeders: [parts.feeders![0]!, out],
          raceways: [
            {
              id: 'R1',
              path: [
                [0, 0, -2],
                [30, 0, -2],
              ],
              method: 'PVC40',
              place: 'underground',
            },
            {
              id: 'R2',
              path: [
                [30, 0, -2],
                [60, 0, -2],
              ],
              method: 'PVC40',
              place,
            },
          ],
        },
        'secondary',
      );
    };
    expect(along('underground')).toEqual([]);
    expect(along('surface')).toMatchObject([{ severity: 'fail', value: 60, limit: 25, unit: 'ft' }]);
  });

  test('of a delta secondary the primary device may protect, by the ratio of the volts', () => {
    // 240 V three-wire: 125 A x 480 / 240 = 250 A, which 250 kcmil (255 A) carries and 4/0 (230 A) does not.
    const delta = (size: string): readonly Finding[] => {
      const parts = behind({ length: 80, conductor: copper(size) }, { volts: 240, mainAmps: 225 });
      const [svc, t1, p1] = parts.equipment;
      const volts = { volts: 240 };
      return told(
        {
          ...parts,
          equipment: [svc!, { ...t1!, secondaryVolts: 240 }, p1!],
          chargers: parts.chargers!.map((one) => ({ ...one, ...volts })),
        },
        'secondary',
      );
    };
    expect(delta('250')).toEqual([]);
    expect(delta('4/0')).toHaveLength(1);
  });

  test('chargers on the transformer itself have neither device nor busbar', () => {
    const parts: Parts = {
      equipment: [source(480), transformer('T1', { kva: 75 })],
      feeders: [feeder('SVC', 'T1', { breakerAmps: 125, conductor: copper('1') })],
      chargers: chargers('T1', 3),
    };
    expect(told(parts, 'secondary')).toMatchObject([
      { severity: 'fail', about: ['T1', 'EV-T1-1', 'EV-T1-2', 'EV-T1-3'], source: 'NEC 2023 240.21(C), 408.36(B)' },
    ]);
  });

  test('a panel without a main has that of its feeder, and it is said', () => {
    expect(told(behind({}), 'secondary')).toMatchObject([{ severity: 'note', about: ['P1', 'F-P1'] }]);
  });

  test('what is not known is said: a length, the primary device', () => {
    const parts = behind({}, { mainAmps: 225 });
    const { length: _, ...out } = parts.feeders![1]!;
    expect(told({ ...parts, feeders: [parts.feeders![0]!, out] }, 'secondary')).toMatchObject([
      { severity: 'warn', about: ['F-P1', 'T1'] },
    ]);
    const root = { ...parts, equipment: parts.equipment.slice(1), feeders: [parts.feeders![1]!] };
    expect(told(root, 'secondary')[0]!.says).toContain('the primary device of T1 is not known');
    expect(told(root, 'transformer-protection')).toMatchObject([{ severity: 'warn', about: ['T1'] }]);
  });
});

test('grouped devices of an industrial switchboard count together, and no main is taken to stand before them', () => {
  // 75 kVA behind a 400 A primary device: a third by the ratio is 308 A, the rated current 208 A; 4/0 has 230 A.
  const grouped = (cars: number, out: Partial<Feeder> = {}): Parts => ({
    equipment: [source(480), transformer('T1', { kva: 75 }), equipment('SB', 'switchboard', { volts: 208 })],
    feeders: [
      feeder('SVC', 'T1', { breakerAmps: 400, conductor: copper('500') }),
      feeder('T1', 'SB', {
        breakerAmps: 225,
        conductor: copper('4/0'),
        length: 20,
        tapCondition: 'industrial',
        ...out,
      }),
    ],
    chargers: chargers('SB', cars),
    rules: { ambientC: 30 },
  });
  // 32 A at 125% have 40 A breakers: five come to 200 A, six to 240 A.
  expect(told(grouped(5), 'secondary')).toEqual([]);
  expect(told(grouped(6), 'secondary')).toMatchObject([
    { severity: 'fail', value: 240, limit: 230, source: 'NEC 2023 240.21(C)(3)' },
  ]);
  expect(supplied(siteOf(grouped(5))).facts.devices.filter(({ at }) => at === 'SB')).toEqual([]);
  const { tapCondition: _, ...plain } = grouped(5).feeders![1]!;
  const usual = { ...grouped(5), feeders: [grouped(5).feeders![0]!, plain] };
  expect(told(usual, 'secondary').some(({ source: from }) => from === 'NEC 2023 240.21(C)(6)')).toBe(true);
});

test('more than six devices do not count as the protection of a secondary', () => {
  // 75 kVA: 150 A ahead needs secondary devices of 300 A in all at most. Seven of 40 A come to 280 A.
  const behindSix = (count: number): Parts => ({
    equipment: [
      source(480),
      transformer('T1', { kva: 75 }),
      ...Array.from({ length: count }, (_, i) => panel(`P${i}`, { mainAmps: 40 })),
    ],
    feeders: [
      feeder('SVC', 'T1', { breakerAmps: 150, conductor: copper('1/0') }),
      ...Array.from({ length: count }, (_, i) => feeder('T1', `P${i}`, { breakerAmps: 40, length: 5 })),
    ],
  });
  expect(told(behindSix(6), 'transformer-protection')).toEqual([]);
  expect(told(behindSix(7), 'transformer-protection')).toHaveLength(1);
});

test('the steps of a feeder tell the rule that lets it start without a device', () => {
  const steps = (rest: Partial<Feeder>) =>
    whyFeeder(siteOf(behind(rest, { mainAmps: 225 })), 'F-P1').filter(({ find }) => find.startsWith('asked by'));
  expect(steps({}).map(({ find, result }) => [find, result])).toEqual([
    ['asked by 240.21(C)(6)', 'holds'],
    ['asked by 240.21(C)(6)', 'holds'],
    ['asked by 240.21(C)(6)', 'holds'],
  ]);
  expect(steps({ device: 'from' })).toEqual([]);
});

test('a disconnect without a rating is told, one with a bus or a fuse is not', () => {
  const of = (rest: object) =>
    told(
      {
        equipment: [source(208), equipment('D1', 'disconnect', { volts: 208, ...rest })],
        feeders: [feeder('SVC', 'D1')],
      },
      'supply-data',
    );
  expect(of({})).toMatchObject([{ severity: 'warn', about: ['D1'] }]);
  expect([...of({ busAmps: 200 }), ...of({ mainAmps: 200 })]).toEqual([]);
});
