import { keptByKey } from '../../routing/kept/kept.ts';
import { numbering } from '../../routing/kept/numbered.ts';
import type { Design } from './design.ts';
import { type HomeRun, homeRun } from './home-run.ts';
import { type Grouping, leastGrouping } from './least-grouping.ts';
import { sharedBetween, type Travel } from './travel-order.ts';
import type { Way } from './way.ts';

/** What is known of one set of members: what it costs, and once it is chosen the home run itself. */
interface Known {
  /** Dollars in place; Infinity where a member cannot be sized so. */
  readonly cost: number;
  run: HomeRun | null;
}

/** A member after some others: what the set so far is known for, and who may come next. */
interface Node {
  known: Known | null;
  next: Map<Way, Node> | null;
}

const memory = new WeakMap<Way, { readonly design: Design; readonly node: Node }>();

const emptyNode = (): Node => ({ known: null, next: null });

function firstNode(design: Design, way: Way): Node {
  const known = memory.get(way);
  if (known?.design === design) return known.node;
  const node = emptyNode();
  memory.set(way, { design, node });
  return node;
}

/** Companions to remember after one member. A box that is dragged is a new one at every step, so that old ones pile up. */
const MOST_COMPANIONS = 64;

function nextNode(node: Node, way: Way): Node {
  node.next ??= new Map();
  let next = node.next.get(way);
  if (next === undefined) {
    if (node.next.size >= MOST_COMPANIONS) node.next.clear();
    next = emptyNode();
    node.next.set(way, next);
  }
  return next;
}

const designed = (design: Design, travel: Travel, members: readonly number[]): HomeRun | null =>
  homeRun(
    design,
    members.map((place) => travel.ways[place]!),
    sharedBetween(travel, members),
  );

/** Remembered by the ways themselves: while one box moves, only the sets that it is in are weighed again. */
function knownOf(design: Design, travel: Travel, members: readonly number[]): Known {
  let node: Node | null = null;
  for (const place of members) {
    const way = travel.ways[place]!;
    node = node === null ? firstNode(design, way) : nextNode(node, way);
  }
  if (node === null) throw new RangeError('a home run holds one circuit or more');
  // Only the cost is kept: most sets are weighed and never chosen.
  node.known ??= { cost: designed(design, travel, members)?.cost ?? Infinity, run: null };
  return node.known;
}

function homeRunOf(design: Design, travel: Travel, members: readonly number[]): HomeRun | null {
  const known = knownOf(design, travel, members);
  known.run ??= designed(design, travel, members);
  return known.run;
}

/**
 * Shares conduits among circuits from one piece of equipment so that conduits and conductors cost least in place, with at
 * most `rules.circuitsPerConduit` to a home run: more in one conduit save raceway, and derate and so may thicken
 * conductors. Never dearer than a conduit for each circuit or than a fixed number to a conduit. Circuits that cannot be
 * sized even alone are left out.
 */
export function shareConduits(design: Design, travel: Travel): readonly HomeRun[] {
  const byId = placesById(travel);
  return groupingOf(design, travel, byId).flatMap((members) => homeRunOf(design, travel, members) ?? []);
}

const alikeNumber = numbering();

/**
 * Which circuits share a conduit. Equipment with ways alike, that go together equally far and are named in the same order,
 * groups them alike: many rows of a lot are one case.
 */
const groupingOf = keptByKey(
  ({ ways, shared }: Travel, byId: readonly number[]) =>
    alikeNumber([...ways.map(({ gauge }) => gauge), ...shared, ...byId]),
  (design: Design, travel: Travel, byId: readonly number[]): Grouping => {
    const most = design.rules.circuitsPerConduit;
    return leastGrouping({
      count: travel.ways.length,
      most,
      costOf: (members) => knownOf(design, travel, members).cost,
      others: fixedNumbers(byId, most),
      isOpen: (members) => forks(travel, members) || !alike(travel, members),
    });
  },
);

/** Places of the ways in the order of the chargers' ids. */
function placesById({ ways }: Travel): readonly number[] {
  const places = ways.map((_, place) => place);
  return places.sort((a, b) => (ways[a]!.charger.id < ways[b]!.charger.id ? -1 : 1));
}

/** So many to a conduit in the order of the chargers' ids, for every number up to the most. */
function fixedNumbers(byId: readonly number[], most: number): readonly Grouping[] {
  return Array.from({ length: Math.min(most, byId.length) }, (_, i) =>
    Array.from({ length: Math.ceil(byId.length / (i + 1)) }, (_, chunk) =>
      byId.slice(chunk * (i + 1), (chunk + 1) * (i + 1)).sort((a, b) => a - b),
    ),
  );
}

/** True where the members do not all leave one trunk one after the other. */
function forks(travel: Travel, members: readonly number[]): boolean {
  const shared = sharedBetween(travel, members);
  return shared.some((feet, i) => i > 0 && feet < shared[i - 1]! - 1e-6);
}

/** True where the members' chargers are alike, so that only where they are tells them apart. */
function alike({ ways }: Travel, members: readonly number[]): boolean {
  const first = ways[members[0]!]!.charger;
  return members.every((place) => {
    const { amps, volts, phases, pilot } = ways[place]!.charger;
    return amps === first.amps && volts === first.volts && phases === first.phases && pilot === first.pilot;
  });
}
