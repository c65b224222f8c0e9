import type { Insulation, Metal } from '../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../routing/site/site.ts';
import type { NamedHomeRun } from '../branches/named.ts';
import { PILOT_SIZE } from '../branches/packing.ts';
import type { Way } from '../branches/way.ts';
import type { PhasePair } from '../plan-file.ts';
import { byWords, kindOf } from '../prices/kind.ts';
import { conductorSpec } from '../prices/spec.ts';
import { chargerBreaker } from './device-quantities.ts';
import { highFeet, isHigh } from './high.ts';
import { GROUNDING_COLOR, lineColors } from './line-colors.ts';
import type { Add } from './tally.ts';

const lineKind = byWords((conductor, color) =>
  kindOf({
    item: 'conductor',
    spec: `${conductor}, ${color}`,
    unit: 'ft',
    basis: 'one of each line of a circuit: its run and the allowances at equipment and box',
  }),
);
const groundingKind = byWords((conductor, color) =>
  kindOf({
    item: 'grounding conductor',
    spec: `${conductor}, ${color}`,
    unit: 'ft',
    basis: 'one in each conduit, shared by its circuits: its length and the allowances at equipment and box',
  }),
);
const pilotKind = byWords((conductor) =>
  kindOf({
    item: 'pilot conductor',
    spec: conductor,
    unit: 'ft',
    basis: 'one of each circuit with a pilot: its run and the allowances at equipment and box',
  }),
);
const CIRCUIT_TEST = kindOf({
  item: 'test',
  spec: 'branch circuit, insulation resistance and polarity',
  unit: 'each',
  basis: 'one of each circuit, before it is energized; common practice',
});
const specOf = byWords((size, metalAndInsulation) => {
  const [metal, insulation] = metalAndInsulation.split(' ');
  return conductorSpec(size, metal as Metal, insulation as Insulation);
});

const endsHigh = ({ points }: Way): boolean => isHigh(points.at(-1)![2]);

/** Conductors and breakers of a home run. `phases` are those of its circuits. */
export function addConductors(rules: Rules, homeRun: NamedHomeRun, phases: readonly PhasePair[], add: Add): void {
  const { allowance, insulation } = rules;
  const made = `${rules.metal} ${insulation}`;
  homeRun.circuits.forEach(({ way, conductor, breakerAmps, pilot }, i) => {
    const { charger, run } = way;
    const spec = specOf(conductor.size, made);
    const colors = lineColors(phases[i]!, charger.volts);
    const feet = run.conductorLength!;
    const high = highFeet(way, 0, way.length) + (endsHigh(way) ? allowance.box : 0);
    for (const color of colors) add(lineKind(spec, color), charger.id, feet, high);
    if (pilot) add(pilotKind(specOf(PILOT_SIZE, `copper ${insulation}`), ''), charger.id, feet, high);
    add(chargerBreaker(colors.length, breakerAmps), charger.id, 1);
    add(CIRCUIT_TEST, charger.id, 1);
  });
  homeRun.homeRun.pieces.forEach(({ along, from, to, start, end }, i) => {
    const way = homeRun.homeRun.ways[along]!;
    const grounding = homeRun.homeRun.packings[i]!.conductors.find(({ use }) => use === 'grounding')!;
    const atBox = end.kind === 'drop' ? allowance.box : 0;
    const feet = to - from + (start.kind === 'equipment' ? allowance.equipment : 0) + atBox;
    const high = highFeet(way, from, to) + (endsHigh(way) ? atBox : 0);
    add(groundingKind(specOf(grounding.size, made), GROUNDING_COLOR), homeRun.conduits[i]!.id, feet, high);
  });
}
