import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Load } from '../../../routing/site/site.ts';

import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';

/** Volt-amperes on lines A, B, C. */
export type LineVa = readonly [A: number, B: number, C: number];

/** What hangs on one piece of equipment and beyond it, rated, VA; generation left out. */
export interface ConnectedLoad {
  readonly lines: LineVa;
  /** Chargers at nominal volts, and what the ceilings of load management leave of them. */
  readonly chargerVa: number;
  readonly managedVa: number;
  readonly continuousVa: number;
  readonly otherVa: number;
}

/** Rated volt-amperes of a charger at the nominal voltage of what feeds it. */
export const chargerVa = ({ amps, phases }: Charger, { system }: Pick<SupplyNode, 'system'>): number =>
  amps * system.volts * (phases === 3 ? Math.sqrt(3) : 1);

/** Volt-amperes spread over the lines that a circuit lies on, as much on each. */
export function spreadOver(lines: Lines, va: number): LineVa {
  const on = (letter: string): number => (lines.includes(letter) ? va / lines.length : 0);
  return [on('A'), on('B'), on('C')];
}

/**
 * What is connected to each piece of equipment, by line, in the order of the tree: its own circuits and what it feeds.
 * Behind a transformer it is spread evenly over the lines of its primary (a delta-wye winding moves it between lines;
 * common practice, no source).
 */
export const connectedLoads = kept(
  (
    tree: SupplyTree,
    lines: SupplyLines,
    chargers: readonly Charger[],
    loads: readonly Load[],
  ): readonly ConnectedLoad[] => {
    const chargersOf = new Map<string, Charger[]>();
    const loadsOf = new Map<string, Load[]>();
    for (const charger of chargers) addTo(chargersOf, charger.from, charger);
    for (const load of loads) if (load.generation !== true) addTo(loadsOf, load.from, load);
    const all = tree.nodes.map((node) => {
      const { id } = node.equipment;
      return ownLoad(node, lines, chargersOf.get(id) ?? [], loadsOf.get(id) ?? []);
    });
    for (let place = all.length - 1; place >= 0; place--) {
      const node = tree.nodes[place]!;
      all[place] = held(node, all[place]!);
      if (node.parent < 0) continue;
      const [mine, above] = [all[place]!, all[node.parent]!];
      const fed = atFeeder(node, mine, lines);
      all[node.parent] = {
        lines: plus(above.lines, fed),
        chargerVa: above.chargerVa + mine.chargerVa,
        managedVa: above.managedVa + mine.managedVa,
        continuousVa: above.continuousVa + mine.continuousVa,
        otherVa: above.otherVa + mine.otherVa,
      };
    }
    return all;
  },
);

const plus = (a: LineVa, b: LineVa): LineVa => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const sum = ([a, b, c]: LineVa): number => a + b + c;

function ownLoad(
  node: SupplyNode,
  lines: SupplyLines,
  chargers: readonly Charger[],
  loads: readonly Load[],
): ConnectedLoad {
  let own: LineVa = [0, 0, 0];
  let [chargersVa, continuousVa, otherVa] = [0, 0, 0];
  for (const charger of chargers) {
    const va = chargerVa(charger, node);
    own = plus(own, spreadOver(lines.chargers.get(charger.id) ?? 'ABC', va));
    chargersVa += va;
  }
  for (const { id, va, continuous } of loads) {
    own = plus(own, spreadOver(lines.loads.get(id) ?? 'ABC', va));
    if (continuous) continuousVa += va;
    else otherVa += va;
  }
  return { lines: own, chargerVa: chargersVa, managedVa: chargersVa, continuousVa, otherVa };
}

/** With what the ceiling of a piece of equipment leaves of the chargers there and beyond. */
function held({ equipment, system }: SupplyNode, load: ConnectedLoad): ConnectedLoad {
  if (equipment.managedAmps === undefined) return load;
  const most = equipment.managedAmps * system.volts * (system.phases === 3 ? Math.sqrt(3) : 1);
  return { ...load, managedVa: Math.min(load.managedVa, most) };
}

/** By line where the feeder leaves what feeds it. */
export function atFeeder({ equipment, primary }: SupplyNode, load: ConnectedLoad, lines: SupplyLines): LineVa {
  return primary === null ? load.lines : spreadOver(lines.equipment.get(equipment.id) ?? 'ABC', sum(load.lines));
}
