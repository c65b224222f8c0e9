import { byId } from '../../../routing/site/look-up.ts';
import type { Feeder, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { branchDropLimit } from '../../circuits/branch-size.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { planOf } from '../plan-of.ts';
import { type HeldBranches, heldBranches } from './held-branches.ts';
import { type HeldFeeder, heldFeeders, weightOf } from './held-feeders.ts';
import { leastOfEach } from './least-of-each.ts';

/** What is chosen is planned, and what is still over its limit chosen anew, so often at most. */
const ROUNDS = 8;
/** Percent that is taken off more than the plan asks for, and as much more in each round: currents shift with the volts. */
const TO_SPARE = 0.005;

/** Branches of no more equipment than this are priced by their takeoff: that takes its time. */
const MOST_PRICED = 12;

export interface DropHeld {
  readonly file: SiteFile;
  /** Ids of feeders with larger conductors or more in parallel, and of larger transformers. */
  readonly widened: readonly string[];
  readonly larger: readonly string[];
  /** Equipment whose branches are held to less drop than the rule asks for, and to how much, percent. */
  readonly limited: ReadonlyMap<string, number>;
  /** What all of it adds to the price, as it was weighed. */
  readonly dollars: number;
}

/**
 * The file with what is new on the way to each box grown until the drop from nominal is within its limit: conductors of
 * feeders larger or more in parallel, transformers of the next sizes, branches held to less drop by larger conductors of
 * those that lose most. Of all that does it for a piece of equipment the cheapest is taken, the worst equipment first, for
 * what several have ahead of them serves all. What nothing of the tables cures stays as it is. Says what was made larger.
 * @param fresh ids of the feeders, equipment and chargers that may be changed
 */
export function withDropHeld(file: SiteFile, fresh: ReadonlySet<string>, prices: PriceList): DropHeld {
  let next = file;
  let dollars = 0;
  const hopeless = new Set<string>();
  for (let round = 1; round <= ROUNDS; round++) {
    const site = toSite(next);
    const planned = planOf(next);
    const over = tooMuch(planned).filter(({ equipment }) => !hopeless.has(equipment));
    if (over.length === 0) break;
    const choices = new Map<string, HeldFeeders>();
    for (const { equipment, percent } of over) {
      const way = wayTo(site, equipment).flatMap((one) => {
        const known =
          choices.get(one.id) ?? asDrawn(heldFeeders(site, planned, one, fresh, percent + round * TO_SPARE, prices));
        choices.set(one.id, known);
        return known.left.length === 0 ? [] : [{ id: one.id, ...known }];
      });
      const own = heldBranches(site, planned, equipment, fresh, prices);
      const drawn = way.reduce((sum, one) => sum + one.drawn, own.roughly[0]!.percent);
      const most = drawn - percent - round * TO_SPARE;
      const ahead = way.map(({ left }) => left);
      const least = (branches: readonly HeldBranches[]) =>
        leastOfEach<HeldFeeder | HeldBranches>([...ahead, branches], most);
      const rough = least(own.roughly);
      const isFew = over.length <= MOST_PRICED;
      const taken = rough && isFew ? (least(own.near((rough.at(-1) as HeldBranches).limit)) ?? rough) : rough;
      if (taken === null) {
        hopeless.add(equipment);
        continue;
      }
      for (const one of taken) {
        next = one.apply(next);
        dollars += one.dollars;
      }
      // What was made larger for one serves all that is behind it.
      way.forEach(({ id, drawn: was }, i) => {
        choices.set(id, { drawn: was, left: beyond(choices.get(id)!.left, taken[i] as HeldFeeder) });
      });
    }
  }
  return { file: next, dollars, ...grownIn(file, next) };
}

/** What a feeder may still be, and percent that it loses as the file of this round has it. */
interface HeldFeeders {
  readonly drawn: number;
  readonly left: readonly HeldFeeder[];
}

const asDrawn = (left: readonly HeldFeeder[]): HeldFeeders => ({ drawn: left[0]?.percent ?? 0, left });

/** What is no smaller than what was taken, by what it costs beyond that. */
function beyond(choices: readonly HeldFeeder[], taken: HeldFeeder): readonly HeldFeeder[] {
  const kva = taken.transformer?.kva ?? 0;
  return choices
    .filter((one) => one === taken || (one.percent < taken.percent && (one.transformer?.kva ?? 0) >= kva))
    .map((one) => ({ ...one, dollars: one.dollars - taken.dollars }));
}

/** Equipment at whose chargers' boxes the drop is past its limit, and by how much, percent; the worst first. */
const tooMuch = ({ findings }: Plan): readonly { readonly equipment: string; readonly percent: number }[] =>
  findings
    .flatMap(({ rule, about, value, limit }) =>
      rule === 'total-drop' ? [{ equipment: about.at(-1)!, percent: value! - limit! }] : [],
    )
    .sort((a, b) => b.percent - a.percent);

/** What was made larger from one file to another. */
function grownIn(file: SiteFile, next: SiteFile): Omit<DropHeld, 'file' | 'dollars'> {
  const [was, is] = [toSite(file), toSite(next)];
  const feeders = byId(was.feeders);
  const equipment = byId(was.equipment);
  const larger = is.equipment.filter(({ id, kva = 0 }) => kva > (equipment.get(id)?.kva ?? kva));
  const of = new Set(larger.map(({ id }) => id));
  const limited = new Map<string, number>();
  is.chargers.forEach((one, i) => {
    if (one.branchDrop !== undefined && one.branchDrop !== was.chargers[i]!.branchDrop)
      limited.set(one.from, one.branchDrop);
  });
  return {
    // A larger transformer brings the feeder that it wants.
    widened: is.feeders.flatMap((one) => (isWider(is, one, feeders.get(one.id)) && !of.has(one.to) ? [one.id] : [])),
    larger: larger.map(({ id }) => id),
    limited,
  };
}

const isWider = ({ rules }: Site, one: Feeder, other: Feeder | undefined): boolean =>
  other !== undefined && weightOf(rules, one.conductor) > weightOf(rules, other.conductor);

/**
 * Equipment of a site that asks for more than it does in another to hold the drop: behind feeders with more in parallel or
 * larger conductors, behind larger transformers, or with branches that are held to less.
 */
export function behindWider(site: Site, other: Site): ReadonlySet<string> {
  const before = { feeders: byId(other.feeders), equipment: byId(other.equipment), chargers: byId(other.chargers) };
  const { rules } = site;
  const held = new Set(
    site.chargers.flatMap((one) => {
      const there = before.chargers.get(one.id);
      return there && branchDropLimit(rules, one) < branchDropLimit(rules, there) ? [one.from] : [];
    }),
  );
  const isBehind = (one: Feeder): boolean =>
    isWider(site, one, before.feeders.get(one.id)) ||
    (byId(site.equipment).get(one.to)?.kva ?? 0) > (before.equipment.get(one.to)?.kva ?? Number.POSITIVE_INFINITY);
  return new Set(site.equipment.filter(({ id }) => held.has(id) || wayTo(site, id).some(isBehind)).map(({ id }) => id));
}

/** The feeders from a source to a piece of equipment, the last first. */
function wayTo(site: Site, equipment: string): readonly Feeder[] {
  const way: Feeder[] = [];
  for (let to: string | undefined = equipment; to !== undefined; ) {
    const feeder: Feeder | undefined = site.feeders.find((one) => one.to === to);
    if (feeder === undefined || way.includes(feeder)) break;
    way.push(feeder);
    to = feeder.from;
  }
  return way;
}
