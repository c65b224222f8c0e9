import { byId } from '../../../../routing/site/look-up.ts';
import { branchDropLimit } from '../../../circuits/branch-size.ts';
import { marginsOf } from '../../../plan/margins.ts';
import type { Job } from '../kit/draft.ts';
import type { Table, TableCell } from '../kit/tables/table.ts';
import { circuitConductors, circuitFor, circuitTags, phaseInks } from './circuit-words.ts';
import { figure, lengthWords, NONE } from './figures.ts';
import { packetEntries, packetNumbers } from './packet-entries.ts';

/** A row for each charger: its circuit, its run and its three margins. */
export function runSchedule({ site, plan }: Pick<Job, 'site' | 'plan'>): Table {
  const { units } = site;
  const tags = circuitTags(site);
  const conduits = byId(plan.conduits);
  const chargers = byId(site.chargers);
  const margins = marginsOf(plan, site);
  const isLimited = site.chargers.some(({ branchDrop }) => branchDrop !== undefined);
  const numbers = packetNumbers(packetEntries(site, plan));
  return {
    short: 'circuits and runs',
    title: 'Circuit and run schedule',
    columns: [
      { head: 'Charger' },
      { head: 'Drop' },
      { head: 'Stalls', most: 14 },
      { head: 'Circuit' },
      { head: 'Lines' },
      { head: 'Amps', align: 'right' },
      { head: 'Breaker' },
      { head: 'Conductors', most: 22 },
      { head: 'Run', align: 'right' },
      { head: 'Conductor length', align: 'right' },
      { head: 'Longest allowed', align: 'right' },
      { head: 'Cord left over', align: 'right' },
      { head: 'Branch drop %', align: 'right' },
      ...(isLimited ? [{ head: 'Branch drop allowed %', align: 'right' } as const] : []),
      { head: 'Total drop %', align: 'right' },
      { head: 'Volts at box', align: 'right' },
      { head: 'Bends deg', align: 'right' },
      { head: 'Calculation' },
    ],
    rows: plan.runs.map((run) => {
      const charger = chargers.get(run.charger);
      const circuit = circuitFor(plan.circuits, run.charger);
      const { cord, branch } = margins.get(run.charger) ?? { cord: null, branch: null };
      const lines: TableCell = circuit
        ? { text: circuit.phases, swatches: phaseInks(circuit.phases, charger?.volts ?? 208) }
        : { text: NONE };
      return [
        run.charger,
        run.drop,
        charger?.stalls.join(', ') ?? NONE,
        tags.get(run.charger) ?? run.from,
        lines,
        figure(charger?.amps, 0),
        circuit ? `${circuit.breakerAmps} A ${circuit.phases.length}P` : NONE,
        circuit ? circuitConductors(circuit, conduits) : NONE,
        run.length === null ? 'no run' : lengthWords(run.length, units),
        lengthWords(run.conductorLength, units),
        lengthWords(branch?.limit ?? charger?.branchLimit ?? site.rules.branchLimit, units),
        cord === null ? NONE : Number.isFinite(cord.left) ? lengthWords(cord.left, units) : 'no way',
        figure(circuit?.branchDropPercent, 2),
        ...(isLimited ? [charger ? String(branchDropLimit(site.rules, charger)) : NONE] : []),
        figure(circuit?.worstDropPercent, 2),
        figure(circuit?.voltsAtBox, 1),
        run.length === null ? NONE : figure(run.bendDegrees, 0),
        numbers.get(run.charger) ?? NONE,
      ];
    }),
    foot: [
      'Run: developed length from the entry of the panel to the box. Conductor length: the run and the allowances at both ends. Cord left over: at the worst stall, parking direction and inlet; below zero it is short. Total drop: from nominal at the source to the box, the charger at its rating and the rest of what is managed with it at the ceiling. Volts at box: everything on, as load management leaves it. Calculation: its number in the calculation packet.',
    ],
  };
}
