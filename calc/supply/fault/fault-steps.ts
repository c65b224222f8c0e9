import type { Rules } from '../../../routing/site/site.ts';
import type { FaultAmps } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { resistanceShare, TABLE_C } from '../../tables/conductor-of.ts';
import type { Step } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { type Phasor, scaled } from '../load-flow/phasor.ts';
import type { SupplyModel } from '../load-flow/supply-model.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { type System, toNeutral } from '../tree/system.ts';
import type { NodeFault } from './fault.ts';
import { caseWords, type FaultCase, faultCases } from './fault-case.ts';

const SOURCE = 'I = V / |Z|, standard theory';
const COMPONENTS = `${SOURCE}; symmetrical components`;

/** `0.012 + j 0.009 ohm`. */
export const ohmText = ({ re, im }: Phasor): string =>
  `${Number(re.toPrecision(4))} + j ${Number(im.toPrecision(4))} ohm`;

/** What fault current was worked from. */
export interface FaultWork {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly faults: readonly (NodeFault | null)[];
}

/** How the fault currents at a node were found: the most, to neutral, and the least. Empty where there is no end to them. */
export function faultSteps(work: FaultWork, place: number, rules: Rules, tables: CodeTables): readonly Step[] {
  const fault = work.faults[place] ?? null;
  if (fault === null || fault.amps === null) return [];
  const { system } = work.tree.nodes[place]!;
  const cases = faultCases(rules.fault);
  const { values, ahead } = wayTo(work, place, cases.most, tables);
  const loop = { 'in all': ohmText(fault.most.line), 'taken with': caseWords(cases.most) };
  return [
    {
      find: 'available fault current',
      formula:
        system.phases === 3
          ? `volts to neutral / magnitude of the ohms of one line from the supply, R and X added; ${ahead}`
          : `volts / (2 x magnitude of the ohms of one line from the supply), R and X added; ${ahead}`,
      values: { ...values, ...loop, volts: measured(system.volts, 'V') },
      result: fault.amps.most,
      unit: 'A',
      source: `${SOURCE}; ${tables.impedances.source}, its resistance taken from ${TABLE_C} °C to that temperature`,
    },
    ...(fault.amps.xr === undefined
      ? []
      : [
          {
            find: 'X/R there',
            formula: 'reactance / resistance of the same ohms',
            values: loop,
            result: fault.amps.xr,
            source: 'definition',
          },
        ]),
    ...toNeutralSteps(fault, fault.amps, system),
    ...leastSteps(fault, fault.amps, system, cases.least),
  ];
}

function toNeutralSteps({ most }: NodeFault, { lineToNeutral }: FaultAmps, system: System): Step[] {
  if (most.neutral === null || lineToNeutral === undefined) return [];
  return [
    {
      find: 'fault current, line to neutral',
      formula: `volts to neutral / magnitude of the ohms of a line and back on the neutral; ${
        system.neutral === 'halfway'
          ? 'of half a winding 1.5 times its resistance and 1.2 times its reactance (from memory)'
          : 'two thirds of what is ahead of a delta-wye transformer, a source alike to neutral and between lines'
      }`,
      values: { 'in all': ohmText(most.neutral), 'volts to neutral': measured(toNeutral(system), 'V') },
      result: lineToNeutral,
      unit: 'A',
      source: COMPONENTS,
    },
  ];
}

/** The least between two lines and to ground. */
export function leastSteps(
  { least: loops }: Pick<NodeFault, 'least'>,
  { least }: FaultAmps,
  system: System,
  kase: FaultCase,
): Step[] {
  const values = { 'taken with': caseWords(kase) };
  return [
    {
      find: 'least fault current, line to line',
      formula: 'volts / (2 x magnitude of the ohms of one line)',
      values: { ...values, 'one line': ohmText(loops.line), volts: measured(system.volts, 'V') },
      result: least.lineToLine,
      unit: 'A',
      source: SOURCE,
    },
    ...(loops.ground === null || least.lineToGround === undefined
      ? []
      : [
          {
            find: 'least fault current, line to ground',
            formula: 'volts to neutral / magnitude of the ohms of a line and back on the grounding conductors alone',
            values: {
              ...values,
              'in all': ohmText(loops.ground),
              'volts to neutral': measured(toNeutral(system), 'V'),
            },
            result: least.lineToGround,
            unit: 'A',
            source: COMPONENTS,
          },
        ]),
  ];
}

/** Every part on the way from the supply, with its ohms in one case. */
function wayTo(
  { tree, model }: FaultWork,
  place: number,
  { conductorC, impedanceShare }: FaultCase,
  tables: CodeTables,
): { readonly values: Record<string, string>; readonly ahead: string } {
  const values: Record<string, string> = {};
  let ahead = 'supply unlimited, no figure given';
  for (let at = place; at >= 0; at = tree.nodes[at]!.parent) {
    const { equipment, primary, feeder, parent } = tree.nodes[at]!;
    const { faultAmps, faultXr } = equipment;
    const winding = model.windingOhms[at] ?? null;
    const ohms = model.feederOhms[at] ?? null;
    if (winding !== null) values[equipment.id] = ohmText(scaled(winding, impedanceShare));
    if (feeder !== null && ohms !== null)
      values[`feeder ${feeder.id}`] = ohmText({
        re: ohms.re * resistanceShare(tables, feeder.conductor.metal, conductorC),
        im: ohms.im,
      });
    if (parent < 0 && primary === null && faultAmps !== undefined) {
      const xr = faultXr === undefined ? 'all reactance, no X/R given' : `X/R ${faultXr}`;
      values[equipment.id] = `${measured(faultAmps, 'A')}, ${xr}`;
      ahead = 'ohms ahead of a transformer by the square of its ratio';
    }
  }
  return { values, ahead };
}
