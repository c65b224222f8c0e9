import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import { branchDropLimit } from '../../circuits/branch-size.ts';
import { marginsOf } from '../../plan/margins.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/**
 * A row for each charger: its run, its three margins, its circuit and its conduits. Lengths in the site's units, to a
 * ten-thousandth of them; the cautions stand under the rows.
 */
export function runsSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const { units } = site;
  const length = (feet: number | null | undefined): Cell =>
    feet === null || feet === undefined || !Number.isFinite(feet) ? null : round(fromFeet(feet, units), 4);
  const margins = marginsOf(plan, site);
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const chargers = new Map(site.chargers.map((charger) => [charger.id, charger]));
  const faults = new Map(plan.faults.map((fault) => [fault.charger, fault]));
  const head = [
    'charger',
    'drop',
    'stalls',
    'from',
    `run (${units})`,
    `conductor length (${units})`,
    `branch limit (${units})`,
    `branch spare (${units})`,
    'worst stall',
    'worst inlet',
    'parked',
    `cord needed (${units})`,
    `cord available (${units})`,
    `cord spare (${units})`,
    'branch drop (%)',
    'branch drop limit (%)',
    'total drop (%)',
    'worst total drop (%)',
    'amps',
    'volts',
    'breaker (A)',
    'phases',
    'conductor',
    'grounding',
    'pilot',
    'ampacity (A)',
    'fault at the box (A)',
    'least fault, two lines (A)',
    'least fault, to ground (A)',
    'bends (degrees)',
    'conduits',
  ];
  const rows = plan.runs.map((run): Cell[] => {
    const { cord, branch } = margins.get(run.charger) ?? { cord: null, branch: null };
    const circuit = circuits.get(run.charger);
    const charger = chargers.get(run.charger);
    const fault = faults.get(run.charger);
    return [
      run.charger,
      run.drop,
      charger?.stalls.join(' ') ?? null,
      run.from,
      length(run.length),
      length(run.conductorLength),
      length(branch?.limit),
      length(branch?.left),
      cord?.stall ?? null,
      cord?.inlet ?? null,
      cord?.direction ?? null,
      length(cord?.used),
      length(cord?.limit),
      length(cord?.left),
      circuit ? round(circuit.branchDropPercent, 3) : null,
      charger ? branchDropLimit(site.rules, charger) : null,
      circuit ? round(circuit.totalDropPercent, 3) : null,
      circuit ? round(circuit.worstDropPercent, 3) : null,
      charger?.amps ?? null,
      charger?.volts ?? null,
      circuit?.breakerAmps ?? null,
      circuit?.phases ?? null,
      circuit ? `${circuit.conductor.size} AWG ${circuit.conductor.metal} ${circuit.conductor.insulation}` : null,
      circuit ? `${circuit.grounding.size} AWG` : null,
      circuit ? circuit.pilot : null,
      circuit ? round(circuit.ampacity, 2) : null,
      fault ? round(fault.most, 0) : null,
      fault ? round(fault.least.lineToLine, 0) : null,
      fault?.least.lineToGround === undefined ? null : round(fault.least.lineToGround, 0),
      round(run.bendDegrees, 1),
      circuit?.conduits.join(' ') ?? null,
    ];
  });
  return [head, ...rows, [], [CAUTIONS]];
}

const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));
