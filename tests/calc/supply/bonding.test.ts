import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Bonded } from '../../../calc/plan-file/supply.ts';
import { whyEquipment, whyFeeder } from '../../../calc/why/why-supply.ts';
import type { Equipment, Feeder } from '../../../routing/site/site.ts';
import { equipment, feeder, type Parts, panel, siteOf, source, supplied, transformer } from './small-site.ts';

const supplyOf = (parts: Parts) => supplied(siteOf(parts)).supply;
const ground = (parts: Parts, id: string) => supplyOf(parts).feeders.find((one) => one.id === id)!.ground;
const bonded = (parts: Parts, id: string): Bonded | undefined => supplyOf(parts).bonded.find((one) => one.id === id);
const says = (parts: Parts) => supplied(siteOf(parts)).findings.filter(({ rule }) => rule === 'bonding');

const conductor = (size: string, sets = 1, metal: 'copper' | 'aluminum' = 'copper') => ({
  conductor: { size, metal, sets, insulation: 'XHHW-2' } as const,
});
const derived = (rest: Partial<Feeder>, at: Partial<Equipment> = {}): Parts => ({
  equipment: [source(480), transformer('T', at), panel('P', { mainAmps: 200 })],
  feeders: [feeder('SVC', 'T', { breakerAmps: 100 }), feeder('T', 'P', { length: 15, ...rest })],
});
const served = (rest: Partial<Feeder>, at: Partial<Equipment> = {}): Parts => ({
  equipment: [source(208), equipment('SE', 'service', { volts: 208, mainAmps: 400, ...at }), panel('P')],
  feeders: [feeder('SVC', 'SE', { length: 40, breakerAmps: 400, ...rest }), feeder('SE', 'P')],
});

describe('what runs beside the lines of a feeder', () => {
  test('ahead of the first device of a derived system a jumper by its conductors, not by the device', () => {
    // Table 250.102(C)(1): 3/0 copper asks for 4 AWG, where Table 250.122 has 6 AWG for 200 A; 4/0 for 2 AWG.
    expect(ground(derived(conductor('3/0')), 'F-P')).toEqual({ use: 'bonding', size: '4' });
    expect(ground(derived(conductor('4/0')), 'F-P')).toEqual({ use: 'bonding', size: '2' });
    expect(ground(derived(conductor('350', 1, 'aluminum')), 'F-P')).toEqual({ use: 'bonding', size: '1/0' });
  });

  test('in parallel sets, in each raceway by the conductors in it', () => {
    // 8 x 400 kcmil: 1/0 in each, whatever the sum.
    expect(ground(derived({ ...conductor('400', 8), breakerAmps: 2500 }), 'F-P')).toEqual({
      use: 'bonding',
      size: '1/0',
    });
  });

  test('behind a device at its head the grounding conductor of the device', () => {
    expect(ground(derived({ ...conductor('3/0'), device: 'from' }), 'F-P')).toEqual({ use: 'grounding', size: '6' });
    expect(ground(derived({ ...conductor('3/0'), device: 'both' }), 'F-P')).toEqual({ use: 'grounding', size: '6' });
    expect(ground(served({}), 'F-P')).toEqual({ use: 'grounding', size: '6' });
  });

  test('of a tap by the device ahead of what it is tapped from', () => {
    // 100 A at the end of a tap from a board behind 400 A: 3 AWG of Table 250.122, not 8.
    const tapped: Parts = {
      equipment: [source(208), panel('P1', { mainAmps: 400 }), panel('P2', { mainAmps: 100 })],
      feeders: [
        feeder('SVC', 'P1', { ...conductor('600'), breakerAmps: 400 }),
        feeder('P1', 'P2', { ...conductor('1/0'), length: 8, breakerAmps: 100, device: 'to' }),
      ],
    };
    expect(ground(tapped, 'F-P2')).toEqual({ use: 'grounding', size: '3' });
    const steps = whyFeeder(siteOf(tapped), 'F-P2').map(({ find }) => find);
    expect(steps).toContain('device ahead of the tap');
  });

  test('the conductors of a service with a neutral bring none; without one a jumper', () => {
    expect(ground(served(conductor('500')), 'F-SE')).toBeUndefined();
    const delta: Parts = {
      equipment: [source(240), equipment('SE', 'service', { volts: 240, mainAmps: 400 })],
      feeders: [feeder('SVC', 'SE', { ...conductor('500'), breakerAmps: 400 })],
    };
    expect(ground(delta, 'F-SE')).toEqual({ use: 'bonding', size: '1/0' });
    // A fault to ground comes back on the neutral then, which is larger: more than through a grounding conductor.
    const least = (parts: Parts, id: string) =>
      supplyOf(parts).equipment.find((one) => one.id === id)!.fault!.least.lineToGround!;
    expect(least(served(conductor('500')), 'SE')).toBeGreaterThan(
      least(served({ ...conductor('500'), device: 'from' }), 'SE') * 0.999,
    );
  });
});

describe('where a neutral is bonded', () => {
  test('a service: main bonding jumper and electrode conductor by its conductors', () => {
    // 2 x 500 kcmil: 2/0 by both tables; to rods alone 6 AWG.
    expect(bonded(served(conductor('500', 2), { electrode: 'water-pipe' }), 'SE')).toEqual({
      id: 'SE',
      of: 'service',
      electrode: 'water-pipe',
      conductor: { size: '500', metal: 'copper', sets: 2 },
      jumper: { size: '2/0', mils: null, metal: 'copper' },
      electrodeConductor: { size: '2/0', metal: 'copper' },
    });
    expect(bonded(served(conductor('500', 2), { electrode: 'rods' }), 'SE')!.electrodeConductor!.size).toBe('6');
  });

  test('a derived system: system bonding jumper and electrode conductor by all that leaves it', () => {
    expect(bonded(derived(conductor('3/0'), { electrode: 'building-steel' }), 'T')).toMatchObject({
      of: 'derived system',
      jumper: { size: '4' },
      electrodeConductor: { size: '4' },
    });
    const two = derived(conductor('3/0'));
    const both = {
      ...two,
      equipment: [...two.equipment, panel('P2', { mainAmps: 200 })],
      feeders: [...two.feeders!, feeder('T', 'P2', { ...conductor('3/0'), length: 10 })],
    };
    // 335.6 kcmil: over 3/0 through 350.
    expect(bonded(both, 'T')).toMatchObject({ jumper: { size: '2' }, conductor: { sets: 2 } });
  });

  test('a board with an electrode: of a structure no jumper, straight from a source a service', () => {
    const structure = served({}, {});
    const at = (id: string): Parts => ({
      ...structure,
      equipment: structure.equipment.map((one) => (one.id === id ? { ...one, electrode: 'concrete-encased' } : one)),
    });
    expect(bonded(at('P'), 'P')).toEqual({
      id: 'P',
      of: 'structure',
      electrode: 'concrete-encased',
      conductor: { size: '3/0', metal: 'copper', sets: 1 },
      electrodeConductor: { size: '4', metal: 'copper' },
    });
    const straight: Parts = {
      equipment: [source(208), panel('P', { electrode: 'ring' })],
      feeders: [feeder('SVC', 'P')],
    };
    expect(bonded(straight, 'P')).toMatchObject({ of: 'service', jumper: { size: '4' } });
  });

  test('steps tell both tables', () => {
    const steps = whyEquipment(siteOf(derived(conductor('3/0'))), 'T');
    const found = (find: string) => steps.find((step) => step.find === find);
    expect(found('bonding jumper by the table')).toMatchObject({ result: '4', source: 'NEC 2023 Table 250.102(C)(1)' });
    expect(found('electrode conductor by the table')).toMatchObject({ result: '4', source: 'NEC 2023 Table 250.66' });
  });
});

describe('what is said of it', () => {
  test('an electrode that is not given, a conductor that is not known, a source with no service behind it', () => {
    expect(says(derived(conductor('3/0')))).toMatchObject([{ severity: 'note', about: ['T'] }]);
    expect(says(derived(conductor('3/0'), { electrode: 'rods' }))).toEqual([]);
    const bare: Parts = { equipment: [source(480), transformer('T')], feeders: [feeder('SVC', 'T')] };
    expect(says(bare)).toMatchObject([{ severity: 'warn', about: ['T'] }]);
    const straight = (rest: Partial<Feeder>): Parts => ({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', rest)],
    });
    expect(says(straight({}))).toMatchObject([{ severity: 'note', about: ['P', 'F-P', 'SVC'] }]);
    expect(says(straight({ existing: true }))).toEqual([]);
    expect(says(straight({ device: 'from' }))).toEqual([]);
  });

  test('a secondary without a neutral, and a jumper that is a busbar', () => {
    const delta = derived({}, { secondaryVolts: 240 });
    expect(
      says({ ...delta, equipment: [delta.equipment[0]!, delta.equipment[1]!, panel('P', { volts: 240 })] }),
    ).toMatchObject([{ severity: 'note', says: expect.stringContaining('without a neutral') }]);
    expect(says(served(conductor('600', 30), { electrode: 'rods' }))).toMatchObject([
      { severity: 'warn', says: expect.stringContaining('2250000 circular mils') },
    ]);
  });
});

describe('the takeoff', () => {
  const rows = (parts: Parts) =>
    new Map(plan(siteOf(parts)).takeoff.map(({ item, spec, quantity }) => [`${item}, ${spec}`, quantity]));

  test('has jumper, electrode conductor, rods and the jumper in the raceway', () => {
    const found = rows(derived(conductor('3/0'), { electrode: 'rods' }));
    expect(found.get('system bonding jumper, 4 AWG copper, bare')).toBe(1);
    // 20 ft and 5% of waste.
    expect(found.get('electrode conductor, 6 AWG copper, bare')).toBeCloseTo(21, 9);
    expect(found.get('ground rod, 5/8 in x 8 ft')).toBe(2);
    expect(found.get('electrode connection, clamp or weld')).toBe(2);
    // 15 ft and 5 ft at both ends, and 5%.
    expect(found.get('feeder bonding conductor, 4 AWG copper XHHW-2')).toBeCloseTo(25 * 1.05, 9);
    expect([...found.keys()].some((key) => key.startsWith('feeder grounding conductor'))).toBe(true);
  });

  test('leaves out what an existing service has already', () => {
    const found = (existing: boolean) => rows(served({ ...conductor('500'), existing }, { electrode: 'ring' }));
    expect(found(true).has('main bonding jumper, 1/0 AWG copper, bare')).toBe(false);
    expect(found(false).get('main bonding jumper, 1/0 AWG copper, bare')).toBe(1);
    expect(found(false).get('ground ring, 2 AWG copper, bare')).toBeCloseTo(21, 9);
  });
});
