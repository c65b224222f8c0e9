import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MARGIN_KINDS, marginsOf } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { whyMargin } from '../../../calc/why/why-margins.ts';
import { whyBox, whyEquipment, whyFeeder } from '../../../calc/why/why-supply.ts';
import type { Step } from '../../../calc/words/explain.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';

const site = toSite(JSON.parse(readFileSync('samples/fleet-yard.site.json', 'utf8')));
const planned = plan(site);
const { supply } = planned;

const found = (steps: readonly Step[], find: string): Step => steps.find((step) => step.find === find)!;
const number = (value: string | number | undefined): number => Number.parseFloat(String(value));
/** The amperes of a line text, `A 96.1, B 95.9 A`. */
const amperes = (text: string | number | undefined): number[] =>
  [...String(text).matchAll(/[ABCN] (\d+(?:\.\d+)?)/g)].map(([, value]) => Number(value));

describe('the steps of equipment', () => {
  test.each(supply.equipment)('end in what the plan says of $id', (row) => {
    const steps = whyEquipment(site, row.id);
    expect(found(steps, 'connected load').result).toBe(row.connectedVa);
    expect(found(steps, 'demand').result).toBe(row.demandAmps);
    expect(found(steps, 'available fault current')?.result).toBe(row.faultAmps);
    if (row.percentLoaded === undefined) return;
    const loaded = found(steps, 'loaded');
    expect(loaded.result).toBe(row.percentLoaded);
    expect((100 * number(loaded.values.demand)) / number(loaded.values.rating)).toBeCloseTo(row.percentLoaded, 3);
  });

  test('name the ceiling of load management and what it leaves', () => {
    const share = found(whyEquipment(site, 'P1'), 'share that load management leaves');
    expect(share.values.ceiling).toBe('125 A');
    expect(share.result).toBe(supply.equipment.find(({ id }) => id === 'P1')!.chargerShare);
  });

  test.each(supply.transformers)('of transformer $id end in its loading, which its values give', (row) => {
    const steps = whyEquipment(site, row.id);
    const worst = found(steps, 'worst line');
    expect(worst.result).toBe(row.worstLinePercent);
    expect((100 * number(worst.values.greatest)) / number(worst.values.rated)).toBeCloseTo(row.worstLinePercent, 3);
    const loss = found(steps, 'loss in its windings');
    const squares = amperes(loss.values.amperes).reduce((sum, amps) => sum + amps ** 2, 0);
    expect((number(loss.values.R) * squares) / row.lossWatts).toBeCloseTo(1, 2);
  });

  test('of a transformer say by what its ohms and its load were found', () => {
    const of = (xr: number | undefined, phases: 1 | 3) => {
      const file = fleetYard();
      const equipment = file.equipment!.map((one) => {
        if (one.kind !== 'transformer') return one;
        const { xr: _, ...rest } = one;
        return { ...rest, phases, ...(xr === undefined ? {} : { xr }) };
      });
      const steps = whyEquipment(toSite({ ...file, equipment }), 'T1');
      return {
        ohms: found(steps, 'ohms of one line, on the secondary'),
        load: found(steps, 'load'),
        loaded: found(steps, 'loaded'),
      };
    };
    expect(of(2, 3).ohms.formula).not.toContain('half');
    expect(of(2, 1).ohms.formula).toContain('half of it in each line');
    expect(of(2, 3).ohms).toMatchObject({
      values: { impedance: '4.5%', 'X/R': 2, volts: '208 V' },
      source: 'nameplate; standard machine theory',
    });
    expect(of(undefined, 3).ohms.values['X/R']).toContain('usual for its size');
    expect(of(undefined, 3).ohms.source).toContain('rom memory');
    expect(of(2, 3).load.formula).toContain('everything on');
  });

  test('are none for what is not there', () => {
    expect(whyEquipment(site, 'nothing')).toEqual([]);
    expect(whyFeeder(site, 'nothing')).toEqual([]);
    expect(whyBox(site, 'nothing')).toEqual([]);
  });
});

describe('the steps of a feeder', () => {
  test.each(supply.feeders)('end in what the plan says of $id, which their values give', (row) => {
    const steps = whyFeeder(site, row.id);
    const drop = found(steps, 'drop');
    expect(drop.result).toBe(row.dropPercent);
    const volts = (name: string): number[] =>
      [...String(drop.values[name]).matchAll(/(?:AB|BC|CA) (\d+(?:\.\d+)?)/g)].map(([, value]) => Number(value));
    const far = volts('at its far end');
    const most = Math.max(...volts('at its head').map((volt, i) => volt - far[i]!));
    // Volts are told to a tenth.
    expect(Math.abs((100 * most) / number(drop.values.nominal) - row.dropPercent)).toBeLessThan(0.06);
    const loss = found(steps, 'loss');
    const squares = amperes(loss.values.amperes).reduce((sum, amps) => sum + amps ** 2, 0);
    expect((number(loss.values.R) * squares) / row.lossWatts).toBeCloseTo(1, 2);
    expect(found(steps, 'loaded').result).toBe(row.percentLoaded);
  });

  test('have the ohms that the length and Table 9 give', () => {
    const row = supply.feeders[0]!;
    const { values, result } = found(whyFeeder(site, row.id), 'ohms of one line');
    const ohms = (number(values.R) * row.length) / 1000 / number(values.sets);
    expect(number(result) / ohms).toBeCloseTo(1, 3);
  });
});

test('the steps of a box end in its volts and in the drop that they make', () => {
  for (const { charger, voltsAtBox, totalDropPercent } of planned.circuits) {
    const steps = whyBox(site, charger);
    expect(found(steps, 'volts at the box').result).toBe(voltsAtBox);
    const drop = found(steps, 'drop in all');
    expect(drop.result).toBe(totalDropPercent);
    expect(100 * (1 - number(drop.values['at the box']) / number(drop.values.nominal))).toBeCloseTo(
      totalDropPercent,
      3,
    );
  }
});

test('the steps of every margin end in it, by what they name', () => {
  for (const { charger, ...margins } of marginsOf(planned, site).values())
    for (const kind of MARGIN_KINDS) {
      const last = whyMargin(site, planned, charger, kind).at(-1)!;
      expect(last.result).toBe(margins[kind]!.left);
      const [all, less] = Object.values(last.values).map(number);
      expect(all! - less!).toBeCloseTo(margins[kind]!.left, 3);
    }
});

test('the needed cord is the hypotenuse of its plan length and height', () => {
  for (const { charger } of planned.circuits) {
    const { values, result } = found(whyMargin(site, planned, charger, 'cord'), 'cord needed in the worst case');
    const sides = [values['plan length'], values['difference of height']].map(number);
    expect(Math.hypot(sides[0]!, sides[1]!)).toBeCloseTo(Number(result), 3);
  }
});

test('every step names its source', () => {
  const steps = [
    ...site.equipment.flatMap(({ id }) => whyEquipment(site, id)),
    ...site.feeders.flatMap(({ id }) => whyFeeder(site, id)),
    ...whyBox(site, site.chargers[0]!.id),
    ...MARGIN_KINDS.flatMap((kind) => whyMargin(site, planned, site.chargers[0]!.id, kind)),
  ];
  for (const { source, formula } of steps) expect([source, formula]).not.toContain('');
});
