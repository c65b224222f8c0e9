import type { Insulation, Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../../routing/site/site.ts';
import { PILOT_SIZE } from '../../branches/home-runs/packing.ts';
import type { ConduitOpening } from '../../branches/home-runs/piece.ts';
import type { NamedHomeRun } from '../../branches/named.ts';
import { type ConduitWay, pointAt } from '../../branches/way.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import { conductorSpec, wireSpec } from '../../prices/spec.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { aloftAt, aloftOn, ON_GROUND, plusAloft, times } from '../high.ts';
import type { Add } from '../tally.ts';
import { chargerBreaker } from './device-quantities.ts';
import { GROUNDING_COLOR, lineColors, PILOT_COLOR } from './line-colors.ts';

const lineKind = byWords((conductor, color) =>
  takeoffKind({
    item: 'conductor',
    spec: `${conductor}, ${color}`,
    unit: 'ft',
    basis: 'one of each line of a circuit: its run and the allowances at equipment and box',
  }),
);
const groundingKind = byWords((conductor, color) =>
  takeoffKind({
    item: 'grounding conductor',
    spec: `${conductor}, ${color}`,
    unit: 'ft',
    basis:
      'one in each conduit, shared by its circuits: its length and the allowances at equipment and at each box that it ends in; it goes on where conduits are coupled',
  }),
);
const pilotKind = byWords((conductor, color) =>
  takeoffKind({
    item: 'pilot conductor',
    spec: `${conductor}, ${color}`,
    unit: 'ft',
    basis:
      'one of each circuit with a pilot, which returns on the grounding conductor: its run and the allowances at equipment and box',
  }),
);
const CIRCUIT_TEST = takeoffKind({
  item: 'test',
  spec: 'branch circuit, insulation resistance and polarity',
  unit: 'each',
  basis: 'one of each circuit, before it is energized; common practice',
});
const connectorKind = byWords((spec) =>
  takeoffKind({
    item: 'wire connector',
    spec: `to ${spec}`,
    unit: 'each',
    basis: 'where each line, the ground and the pilot of a circuit meet its cord; common practice',
  }),
);
const specOf = byWords((size, metalAndInsulation) => {
  const [metal, insulation] = metalAndInsulation.split(' ');
  return conductorSpec(size, metal as Metal, insulation as Insulation);
});

const endOf = ({ points }: ConduitWay): number => points.at(-1)![2];

/** Conductors and breakers of a home run. `phases` are those of its circuits. */
export function addConductors(
  tables: CodeTables,
  rules: Rules,
  homeRun: NamedHomeRun,
  phases: readonly PhasePair[],
  add: Add,
): void {
  const { allowance, insulation, workHeight } = rules;
  const made = `${rules.metal} ${insulation}`;
  homeRun.circuits.forEach(({ way, conductor, breakerAmps, pilot }, i) => {
    const { charger, run } = way;
    const spec = specOf(conductor.size, made);
    const colors = lineColors(phases[i]!, charger.volts);
    const feet = run.conductorLength!;
    const atEnd = aloftAt(endOf(way), workHeight);
    const aloft = plusAloft(aloftOn(way, 0, way.length, workHeight), times(atEnd, allowance.box));
    for (const color of colors) add(lineKind(spec, color), charger.id, feet, aloft);
    if (pilot) add(pilotKind(specOf(PILOT_SIZE, `copper ${insulation}`), PILOT_COLOR), charger.id, feet, aloft);
    add(chargerBreaker(tables, colors.length, breakerAmps), charger.id, 1);
    add(CIRCUIT_TEST, charger.id, 1);
    const joints = colors.length + 1 + (pilot ? 1 : 0);
    add(connectorKind(wireSpec(conductor.size, rules.metal), ''), charger.id, joints, times(atEnd, joints));
  });
  addGroundings(rules, made, homeRun, add);
}

/**
 * The grounding conductor of each conduit, which ends in a tail at every box; where conduits are only coupled it goes on,
 * and is counted in the one that it begins in.
 */
function addGroundings(
  { allowance, workHeight }: Rules,
  made: string,
  { homeRun, conduits }: NamedHomeRun,
  add: Add,
): void {
  const tail = (kind: ConduitOpening['kind']): number =>
    kind === 'equipment' ? allowance.equipment : kind === 'coupling' ? 0 : allowance.box;
  let [begun, feet, aloft] = [0, 0, ON_GROUND];
  homeRun.pieces.forEach(({ along, from, to, start, end }, i) => {
    const way = homeRun.ways[along]!;
    const grounding = homeRun.packings[i]!.conductors.find(({ use }) => use === 'grounding')!;
    const tailUp = (at: number, kind: ConduitOpening['kind']) =>
      times(aloftAt(pointAt(way, at)[2], workHeight), tail(kind));
    if (start.kind !== 'coupling') [begun, feet, aloft] = [i, 0, ON_GROUND];
    feet += tail(start.kind) + to - from + tail(end.kind);
    aloft = plusAloft(aloft, aloftOn(way, from, to, workHeight));
    if (start.kind !== 'equipment') aloft = plusAloft(aloft, tailUp(from, start.kind));
    aloft = plusAloft(aloft, tailUp(to, end.kind));
    if (end.kind !== 'coupling')
      add(groundingKind(specOf(grounding.size, made), GROUNDING_COLOR), conduits[begun]!.id, feet, aloft);
  });
}
