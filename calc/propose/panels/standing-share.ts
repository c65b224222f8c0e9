import { dugFrom } from '../../../routing/propose/equipment/canopies.ts';
import { branchesFrom, type EquipmentProposal } from '../../../routing/propose/equipment/propose-equipment.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { BranchEnd } from './branch-ends.ts';
import { type StandingPanel, standingPanels } from './panel-room.ts';

/** Which ends panels that stand take, and what new ones there are for the rest. */
export interface Shares {
  readonly standing: readonly StandingPanel[];
  /** Panel by end. */
  readonly given: ReadonlyMap<string, string>;
  readonly rest: readonly BranchEnd[];
  readonly proposal: EquipmentProposal;
}

/** Panels that stand are asked to take ends up to such shares of the longest branch. */
const REACHES = [1, 0.6, 0.4, 0.25, 0] as const;

/**
 * Ends shared out between the panels that stand and new ones: those within some distance of a standing panel go to the
 * nearest with room, the rest to new ones; of several distances, none among them, the one at which it all weighs least.
 * @param trench what a foot of trench counts as, in feet of branch
 * @param canAdd something can feed new panels; else those that stand take all that they can
 */
export function sharesOf(
  site: Site,
  ends: readonly BranchEnd[],
  most: number,
  canAdd: boolean,
  trench: number,
  propose: (rest: readonly BranchEnd[]) => EquipmentProposal,
): Shares {
  const standing = standingPanels(site);
  if (standing.every(({ room }) => room === 0))
    return { standing, given: new Map(), rest: ends, proposal: propose(ends) };
  const far = standing.map(({ panel }) => ends.map(({ at }) => branchesFrom(site, panel.entry, [at])));
  // Several distances may leave the same ends to new panels.
  const known = new Map<string, EquipmentProposal>();
  const proposed = (rest: readonly BranchEnd[]): EquipmentProposal => {
    const key = JSON.stringify(rest.map(({ id }) => id));
    const proposal = known.get(key) ?? propose(rest);
    known.set(key, proposal);
    return proposal;
  };
  const shared = (canAdd ? REACHES : REACHES.slice(0, 1)).map((share): Shares & { readonly weight: number } => {
    const room = standing.map((one) => one.room);
    const given = new Map<string, string>();
    let weight = 0;
    const pairs = far
      .flatMap((own, p) => own.map((feet, i) => ({ feet, p, i })))
      .filter(({ feet }) => feet <= share * most)
      .sort((a, b) => a.feet - b.feet || a.i - b.i || a.p - b.p);
    for (const { feet, p, i } of pairs) {
      const { id, circuits } = ends[i]!;
      if (given.has(id) || room[p]! < circuits) continue;
      room[p]! -= circuits;
      given.set(id, standing[p]!.panel.id);
      weight += feet * circuits;
    }
    const rest = ends.filter(({ id }) => !given.has(id));
    const proposal = proposed(rest);
    const dug = standing.reduce((sum, { panel }) => {
      const own = ends.flatMap(({ id, at }) => (given.get(id) === panel.id ? [at] : []));
      return sum + (own.length > 0 ? dugFrom(site, panel.entry, own) : 0);
    }, 0);
    weight += trench * dug;
    return { standing, given, rest, proposal, weight: weight + proposal.total + LEFT_OUT * proposal.without.length };
  });
  return shared.reduce((best, one) => (one.weight < best.weight - 1e-9 ? one : best));
}

/** Feet that an end counts as which nothing feeds: more than any branch. */
const LEFT_OUT = 1e6;
