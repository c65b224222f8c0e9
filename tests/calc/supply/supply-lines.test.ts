import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDraw, noDraws } from '../../../calc/supply/load-flow/draws.ts';
import { polar } from '../../../calc/supply/load-flow/phasor.ts';
import { type Bus, solve } from '../../../calc/supply/load-flow/sweep.ts';
import { greatestLine } from '../../../calc/supply/panels/demand.ts';
import { placeLoads } from '../../../calc/supply/tree/load-lines.ts';
import { linesOf } from '../../../calc/supply/tree/supply-lines.ts';
import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import { chargers, equipment, feeder, load, panel, siteOf, source, supplied, transformer } from './small-site.ts';

describe('the lines that everything lies on', () => {
  test('chargers of one panel read AB, BC, CA in the order of the file', () => {
    const site = siteOf({ equipment: [panel('P')], chargers: chargers('P', 5) });
    expect([...linesOf(site).chargers.values()]).toEqual(['AB', 'BC', 'CA', 'AB', 'BC']);
  });

  test('odd circuits of panels on one transformer start on pairs in turn', () => {
    const names = ['P', 'Q', 'R'];
    const site = siteOf({
      equipment: [transformer('T'), ...names.map((name) => panel(name))],
      feeders: names.map((name) => feeder('T', name)),
      chargers: names.flatMap((name) => chargers(name, 4)),
    });
    const { chargers: pairs } = linesOf(site);
    expect(names.map((name) => pairs.get(`EV-${name}-1`))).toEqual(['AB', 'BC', 'CA']);
    const { amps } = supplied(site).supply.equipment[0]!;
    expect(Math.max(amps.A, amps.B, amps.C) / Math.min(amps.A, amps.B, amps.C)).toBeLessThan(1.01);
  });

  test('the imbalance is given as assigned and as plain rotation would have it', () => {
    const mixed = chargers('P', 6).map((charger, i) => ({ ...charger, amps: i % 3 === 0 ? 48 : 16 }));
    const row = supplied(siteOf({ equipment: [panel('P')], chargers: mixed })).supply.equipment[0]!;
    // Rotation puts both of 48 A on AB; 48 + 16 + 16 and so on would be the total of 160 over three.
    expect(row.balance!.rotation.worstLineAmps).toBeCloseTo(Math.sqrt(96 ** 2 + 32 ** 2 + 96 * 32), 9);
    expect(row.balance!.assigned.worstLineAmps).toBeLessThan(row.balance!.rotation.worstLineAmps);
    expect(row.balance!.assigned.imbalancePercent).toBeLessThan(row.balance!.rotation.imbalancePercent);
  });

  test('loads lie to neutral or across lines by their voltage, and where they balance', () => {
    const site = siteOf({
      equipment: [panel('P')],
      loads: [
        load('P', 'L1'),
        load('P', 'L2'),
        load('P', 'L3'),
        load('P', 'L4', { volts: 208 }),
        load('P', 'L5', { volts: 208, phases: 3 }),
      ],
    });
    const { loads } = linesOf(site);
    expect(['L1', 'L2', 'L3'].map((id) => loads.get(id)).sort()).toEqual(['A', 'B', 'C']);
    expect(loads.get('L4')).toHaveLength(2);
    expect(loads.get('L5')).toBe('ABC');
  });

  test('a load goes where the chargers leave most room', () => {
    // Four chargers: AB, BC, CA, AB. Line C carries least.
    const site = siteOf({ equipment: [panel('P')], chargers: chargers('P', 4), loads: [load('P', 'L')] });
    expect(linesOf(site).loads.get('L')).toBe('C');
  });

  test('loads to neutral are within one load of even', () => {
    const sizes = [10, 9, 8, 7, 6, 5, 4, 3, 2, 1];
    const placed = placeLoads(
      sizes.map((amps) => ({ id: `${amps}`, amps, choices: ['A', 'B', 'C'] })),
      [],
    );
    const sum = (line: string): number =>
      sizes.reduce((so, amps) => so + (placed.get(`${amps}`) === line ? amps : 0), 0);
    const sums = [sum('A'), sum('B'), sum('C')];
    expect(Math.max(...sums) - Math.min(...sums)).toBeLessThanOrEqual(1);
  });

  test('single-phase panels and transformers are spread over the pairs of what feeds them', () => {
    const names = ['P', 'Q', 'R'];
    const site = siteOf({
      equipment: [source(208), ...names.map((name) => panel(name, { phases: 1 }))],
      feeders: names.map((name) => feeder('SVC', name)),
      chargers: names.flatMap((name) => chargers(name, 2)),
    });
    expect(names.map((name) => linesOf(site).equipment.get(name)).sort()).toEqual(['AB', 'BC', 'CA']);
    const behind = siteOf({
      equipment: [
        source(480),
        equipment('T', 'transformer', {
          phases: 1,
          kva: 50,
          primaryVolts: 480,
          secondaryVolts: 240,
          impedancePercent: 3,
        }),
      ],
      feeders: [feeder('SVC', 'T')],
      chargers: chargers('T', 2, { volts: 240 }),
      loads: [load('T', 'L')],
    });
    const lines = linesOf(behind);
    expect([...lines.chargers.values()]).toEqual(['AB', 'AB']);
    expect(['A', 'B']).toContain(lines.loads.get('L'));
  });

  test('a charger that asks for more phases than there are lies across the two lines', () => {
    const site = siteOf({ equipment: [panel('P', { phases: 1 })], chargers: chargers('P', 1, { phases: 3 }) });
    expect(linesOf(site).chargers.get('EV-P-1')).toBe('AB');
  });
});

describe('a load beside chargers goes where the greatest line current is least', () => {
  const NOMINAL = 208 / Math.sqrt(3);
  const bus: Bus = {
    parent: -1,
    nominal: NOMINAL,
    held: new Float64Array([0, -120, 120].flatMap((angle) => Object.values(polar(NOMINAL, angle)))),
    ratio: null,
    back: null,
    impedance: null,
  };
  const worst = (lines: readonly { readonly lines: Lines; readonly amps: number }[]): number => {
    const draws = noDraws(1);
    for (const one of lines) addDraw(draws.current, 0, one.lines, one.amps, 0);
    return greatestLine(solve([bus], draws).out, 0);
  };

  test('as the sweeps have it, for loads to neutral and across lines', () => {
    const standing = fc.array(
      fc.record({ lines: fc.constantFrom(...LINES), amps: fc.double({ min: 1, max: 80, noNaN: true }) }),
      { maxLength: 6 },
    );
    const choices = fc.constantFrom<readonly Lines[]>(['A', 'B', 'C'], ['AB', 'BC', 'CA']);
    fc.assert(
      fc.property(standing, choices, fc.double({ min: 1, max: 60, noNaN: true }), (there, words, amps) => {
        const chosen = placeLoads([{ id: 'L', amps, choices: words }], there).get('L')!;
        const costs = words.map((lines) => worst([...there, { lines, amps }]));
        expect(worst([...there, { lines: chosen, amps }])).toBeCloseTo(Math.min(...costs), 6);
      }),
    );
  });
});
