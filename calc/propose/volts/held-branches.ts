import type { Charger, Site, SiteFile } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { lengthByKind } from '../../branches/home-runs/member.ts';
import type { BranchCircuit } from '../../branches/named.ts';
import { branchDropLimit, branchSize } from '../../circuits/branch-size.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { branchesWorth } from '../raceways/paid.ts';
import type { Choice } from './least-of-each.ts';

/** The branches out of one piece of equipment, held to some drop: what the worst box then sees beyond its feeder. */
export interface HeldBranches extends Choice {
  /** Absent where they are as they are. */
  readonly limit?: number;
  readonly apply: (file: SiteFile) => SiteFile;
}

/** What the branches of one piece of equipment may be held to, near enough; and what some of that truly comes to. */
export interface BranchesHeld {
  /** As they are first. The dollars of the rest are reckoned from the feet of line conductors, by usual prices. */
  readonly roughly: readonly HeldBranches[];
  /** As they are, and a limit and its neighbors, by the takeoff with the conduits and boxes that they want. */
  readonly near: (limit: number | undefined) => readonly HeldBranches[];
}

/** What branches may be held to, percent: of the circuits only those are grown that lose more. */
const LIMITS = [2.5, 2, 1.75, 1.5, 1.25, 1, 0.75] as const;
/** A limit that takes off less than this is none of its own, percent. */
const NO_LESS = 0.05;
/** Times what line conductors cost more: with grounding, conduits and boxes 1.7 to 2.1 on the lots that were tried. */
const WITH_CONDUITS = 2;

/**
 * What the new branches out of some equipment may be held to: as they are, or to less drop by larger conductors of those
 * that lose more. The percent is that of the worst box past its feeder's.
 * @param canGrow which chargers are new
 */
export function heldBranches(
  site: Site,
  planned: Plan,
  from: string,
  canGrow: ReadonlySet<string>,
  prices: PriceList,
): BranchesHeld {
  const own = site.chargers.filter((one) => one.from === from);
  const ahead = new Map(
    planned.circuits.flatMap((one) =>
      one.from === from ? [[one.charger, one.worstDropPercent - one.branchDropPercent] as const] : [],
    ),
  );
  const most = Math.max(0, ...ahead.values());
  const worstOf = (percents: readonly (readonly [string, number])[]): number =>
    Math.max(0, ...percents.map(([id, percent]) => percent + (ahead.get(id) ?? most))) - most;
  const drawn =
    planned.branches.find(({ equipment }) => equipment.id === from)?.circuits.flatMap((one) => one ?? []) ?? [];
  const asIs: HeldBranches = { percent: worstOf(percentsOf(drawn)), dollars: 0, apply: (file) => file };
  const isTighter = (one: Charger, limit: number): boolean =>
    canGrow.has(one.id) && branchDropLimit(site.rules, one) > limit;
  const held = (one: Charger, limit: number): Charger => (isTighter(one, limit) ? { ...one, branchDrop: limit } : one);
  const choice = (limit: number, percent: number, dollars: number): HeldBranches => {
    const ids = new Set(own.filter((one) => isTighter(one, limit)).map(({ id }) => id));
    const apply = (file: SiteFile): SiteFile => ({
      ...file,
      chargers: (file.chargers ?? []).map((one) => (ids.has(one.id) ? { ...one, branchDrop: limit } : one)),
    });
    return { percent, dollars, limit, apply };
  };
  const roughly: HeldBranches[] = [asIs];
  const before = conductorsOf(site, drawn, (one) => one);
  for (const limit of LIMITS) {
    if (!own.some((one) => isTighter(one, limit))) continue;
    const then = conductorsOf(site, drawn, (one) => held(one, limit));
    const percent = worstOf(then.percents);
    if (roughly.at(-1)!.percent - percent < NO_LESS) continue;
    roughly.push(choice(limit, percent, WITH_CONDUITS * (then.dollars - before.dollars)));
  }
  const near = (limit: number | undefined): readonly HeldBranches[] => {
    const now = branchesWorth(site, prices, from, own).dollars;
    const at = roughly.findIndex((one) => one.limit === limit);
    const [, ...some] = [asIs, ...roughly.slice(Math.max(1, at - 1), at + 2)];
    return [
      asIs,
      ...some.map((one) => {
        const then = branchesWorth(
          site,
          prices,
          from,
          own.map((charger) => held(charger, one.limit!)),
        );
        return choice(one.limit!, worstOf(percentsOf(then.circuits)), then.dollars - now);
      }),
    ];
  };
  return { roughly, near };
}

const percentsOf = (circuits: readonly BranchCircuit[]) =>
  circuits.map((one) => [one.charger, one.branchDropPercent] as const);

/** Drops and dollars of the line conductors of circuits as they lie, of chargers that are held to something else. */
function conductorsOf(site: Site, circuits: readonly BranchCircuit[], heldOf: (one: Charger) => Charger) {
  const { tables, rules, cost } = designOf(site.rules);
  let dollars = 0;
  const percents = circuits.map(({ way, branch, charger }) => {
    const lengths = lengthByKind(way, rules.allowance);
    const size = branchSize(tables, rules, heldOf(way.charger), branch, lengths)!;
    const { conductor } = size.choice;
    const foot = cost.conductorFoot(conductor.size, conductor.metal, conductor.insulation);
    dollars += branch.poles * way.run.conductorLength! * foot;
    return [charger, size.dropPercent] as const;
  });
  return { dollars, percents };
}
