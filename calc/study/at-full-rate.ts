import type { Charger, Site } from '../../routing/site/site.ts';
import { linesOf, treeOf } from '../supply/tree/supply-lines.ts';

/**
 * Most chargers of a site that can be on at their full rating together under the ceilings of load management: of each
 * board those that its ceiling carries, shared as evenly over its lines as whole chargers can be. Without a ceiling, all.
 * Line currents of chargers across two lines add as phasors 60 degrees apart.
 */
export function atFullRate(site: Site): number {
  const tree = treeOf(site);
  linesOf(site);
  const own = tree.nodes.map(({ equipment: { id } }) => site.chargers.filter(({ from }) => from === id));
  const count = (place: number): number => {
    const { equipment, system } = tree.nodes[place]!;
    const beyond = tree.nodes.flatMap(({ parent }, i) => (parent === place ? [i] : []));
    const most = own[place]!.length + beyond.reduce((sum, i) => sum + count(i), 0);
    const { managedAmps } = equipment;
    if (managedAmps === undefined) return most;
    const all = withBeyond(tree.nodes, place, own);
    return Math.min(most, carriedBy(managedAmps, all, system.phases));
  };
  const inTree = tree.nodes.reduce((sum, { parent }, i) => sum + (parent < 0 ? count(i) : 0), 0);
  const placed = own.reduce((sum, { length }) => sum + length, 0);
  return inTree + (site.chargers.length - placed);
}

function withBeyond(
  nodes: ReturnType<typeof treeOf>['nodes'],
  place: number,
  own: readonly (readonly Charger[])[],
): readonly Charger[] {
  return [...own[place]!, ...nodes.flatMap(({ parent }, i) => (parent === place ? withBeyond(nodes, i, own) : []))];
}

/** How many of some chargers, the smallest first, a ceiling carries at full rate. */
function carriedBy(ceiling: number, chargers: readonly Charger[], phases: 1 | 3): number {
  const rising = chargers.toSorted((a, b) => a.amps - b.amps);
  for (let n = rising.length; n > 0; n--) if (dealtLine(rising.slice(0, n), phases) <= ceiling * (1 + 1e-9)) return n;
  return 0;
}

/**
 * Greatest line current of chargers that are dealt over three pairs of lines in turn, A: sqrt(x^2 + y^2 + xy) of the two
 * pairs that meet there; of single-phase equipment their sum.
 */
export function dealtLine(chargers: readonly Pick<Charger, 'amps' | 'phases'>[], phases: 1 | 3): number {
  if (phases === 1) return chargers.reduce((sum, { amps }) => sum + amps, 0);
  const pairs: [number, number, number] = [0, 0, 0];
  let three = 0;
  for (const { amps, phases: own } of chargers.toSorted((a, b) => b.amps - a.amps)) {
    if (own === 3) three += amps;
    else pairs[pairs.indexOf(Math.min(...pairs))]! += amps;
  }
  const [x, y] = pairs.toSorted((a, b) => b - a) as [number, number, number];
  return three + Math.sqrt(x * x + y * y + x * y);
}
