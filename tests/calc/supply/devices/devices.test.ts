import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Device } from '../../../../calc/plan-file/supply.ts';
import { devicesOf } from '../../../../calc/supply/devices/devices.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { DEVICE_PLACES } from '../../../../routing/site/schema/vocabulary.ts';
import { chargers, equipment, feeder, load, type Parts, panel, siteOf, source, transformer } from '../small-site.ts';
import { anySupply } from './any-supply.ts';

const told = (parts: Parts): readonly string[] =>
  devicesOf(siteOf(parts), NEC_2023).map(
    ({ id, use, at, of, amps, poles, volts, known }) =>
      `${id}: ${use} at ${at} of ${of}, ${amps} A ${poles}P ${volts} V, ${known}`,
  );

const SUPPLY = [source(480), transformer('T1'), panel('P1', { mainAmps: 450, busAmps: 600 })];

describe('devices stand', () => {
  it('where a utility and a transformer lead to, and at the head of other feeders, unless the file says otherwise', () => {
    const site = {
      equipment: [...SUPPLY, panel('P2'), equipment('MSB', 'switchboard', { volts: 480, mainAmps: 800 })],
      feeders: [
        feeder('SVC', 'MSB', { breakerAmps: 800 }),
        feeder('MSB', 'T1'),
        feeder('T1', 'P1', { breakerAmps: 450 }),
        feeder('P1', 'P2', { breakerAmps: 100 }),
      ],
      chargers: chargers('P2', 1),
      loads: [load('P2', 'L1'), load('P2', 'SUN', { volts: 208, phases: 3, va: 36_000, generation: true })],
    };
    expect(told(site)).toEqual([
      'MSB.main: main at MSB of MSB, 800 A 3P 480 V, drawn',
      'F-T1.from: primary at MSB of F-T1, 200 A 3P 480 V, assumed',
      'P1.main: main at P1 of P1, 450 A 3P 208 V, drawn',
      'F-P2.from: feeder at P1 of F-P2, 100 A 3P 208 V, assumed',
      'EV-P2-1: charger at P2 of EV-P2-1, 40 A 2P 208 V, sized',
      'L1: load at P2 of L1, 15 A 1P 208 V, sized',
      // 36,000 / (208 x sqrt 3) = 99.9 A, 125% of it 124.9 A.
      'SUN: load at P2 of SUN, 125 A 3P 208 V, sized',
    ]);
  });

  it('one in the equipment that a tap ends in, one at each end where both are said', () => {
    const parts = (device: (typeof DEVICE_PLACES)[number]): Parts => ({
      equipment: [source(208), panel('P1', { mainAmps: 400 }), panel('P2')],
      feeders: [feeder('SVC', 'P1'), feeder('P1', 'P2', { device, breakerAmps: 60 })],
    });
    const ofP2 = (device: (typeof DEVICE_PLACES)[number]): readonly string[] => told(parts(device)).slice(1);
    expect(ofP2('from')).toEqual(['F-P2.from: feeder at P1 of F-P2, 60 A 3P 208 V, drawn']);
    expect(ofP2('to')).toEqual(['F-P2.to: main at P2 of F-P2, 60 A 3P 208 V, drawn']);
    expect(ofP2('both')).toEqual([
      'F-P2.from: feeder at P1 of F-P2, 60 A 3P 208 V, drawn',
      'F-P2.to: main at P2 of F-P2, 60 A 3P 208 V, drawn',
    ]);
  });

  it('nowhere where nobody drew one: before a board that nothing feeds, about a transformer that feeds chargers itself', () => {
    expect(told({ equipment: [panel('P1')], chargers: chargers('P1', 1) })[0]).toBe(
      'P1.main: main at P1 of P1, null A 3P 208 V, missing',
    );
    expect(told({ equipment: [transformer('T1')], chargers: chargers('T1', 1) })).toEqual([
      'T1.primary: primary at T1 of T1, null A 3P 480 V, missing',
      'T1.secondary: secondary at T1 of T1, null A 3P 208 V, missing',
      'EV-T1-1: charger at T1 of EV-T1-1, 40 A 2P 208 V, sized',
    ]);
  });
});

describe('of any supply', () => {
  const list = (parts: Parts): readonly Device[] => devicesOf(siteOf(parts), NEC_2023);

  it('each device has a name of its own, and every feeder, charger and load at least one that protects it', () => {
    fc.assert(
      fc.property(anySupply, (parts) => {
        const devices = list(parts);
        expect(new Set(devices.map(({ id }) => id)).size).toBe(devices.length);
        const covered = new Set(devices.flatMap(({ protects }) => protects));
        // Those that say they have no device at either end have none, and are told of.
        const held = (parts.feeders ?? []).filter(({ device }) => device !== 'none');
        const asked = [...held, ...(parts.chargers ?? [])].map(({ id }) => id);
        expect(asked.filter((id) => !covered.has(id))).toEqual([]);
      }),
    );
  });
});

test('a drop that moves changes nothing of them: the list is the same', () => {
  const site = siteOf({ equipment: SUPPLY, chargers: chargers('P1', 3), loads: [load('P1', 'L1')] });
  const moved = { ...site, drops: site.drops.map((drop) => ({ ...drop, box: [1, 0, 10] as const })) };
  expect(devicesOf(moved, NEC_2023)).toBe(devicesOf(site, NEC_2023));
});
