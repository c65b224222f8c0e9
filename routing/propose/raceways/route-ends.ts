import type { Equipment, Point3, Site } from '../../site/site.ts';
import { arcSearch } from '../shared/arc-paths.ts';
import { homeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import { type Effort, sharedRoute } from '../shared-route.ts';
import { outOfGround } from './lattice/ground-ways.ts';
import type { Stringer } from './lattice/held-line.ts';
import { type Lattice, latticeOf } from './lattice/lattice.ts';
import { lotFrame } from './lattice/lot-frame.ts';
import { type FloorPrice, type FloorWay, leastUnder } from './least-under.ts';
import { type Judged, searchPaid } from './paid-search.ts';
import type { Joining } from './raceway-paths.ts';
import { standingRoom } from './standing-room.ts';
import { besideLaid } from './walked.ts';
import type { Ways } from './ways-anew.ts';

/** Where a circuit ends, and how long its way may be, feet. */
export interface CircuitEnd {
  readonly id: string;
  readonly at: Point3;
  readonly most: number;
}

/** Straights of new raceways, each with the stringers that hold it. */
export type Straights = readonly (readonly [a: Point3, b: Point3, stringers: readonly Stringer[]])[];

/** What straights come to once they are drawn and planned, and how many such answers are looked at. */
export interface Judging {
  readonly rounds: number;
  readonly of: (laid: Straights, joining: Joining) => Judged;
  /** Hears how many are done. */
  readonly tell: (done: number) => void;
  /** Prices under which nothing can be had; where they are given `floor` is worked. */
  readonly floor?: FloorPrice;
}

export interface RoutedEnds {
  readonly laid: Straights;
  /** How they are best drawn. */
  readonly joining: Joining;
  /** Of the routes by the prices, and what any routes on the lattice cost at least. */
  readonly cost: number;
  readonly bound: number;
  /** Ends to which there is no way. */
  readonly unreached: readonly string[];
  /** Ends to which no way is held: theirs hangs in the air at some place. */
  readonly inAir: readonly string[];
  /** By the floor prices: no routes on the lattice cost less; null where it is not worked. */
  readonly floor: { readonly least: number; readonly ways: readonly FloorWay[] } | null;
}

/** What routes are weighed by, and how far apart what hangs may be supported, feet. */
interface RouteMake {
  readonly price: Readonly<Record<'overhead' | 'underground', SharedPrice>>;
  readonly supportEvery: number;
  /** Dollars of a foot of stringer. */
  readonly stringerFoot: number;
  /** What is laid in the ground lies so deep, feet. */
  readonly cover: number;
  /** Share of the usual steps of the search. */
  readonly share: number;
  readonly mayGoOn: () => boolean;
  /** False where nobody asks how near the best the routes are: finding that takes as long as they do. */
  readonly isBounded?: boolean;
  /** False for the routes that a search begins with. */
  readonly isSearched?: boolean;
  /** False where conduits that stand with room count as new ones. */
  readonly isFilling?: boolean;
}

/** Of the next best answers so many are looked at. */
const POOL = 10;

/** Past so many rounds a circuit, and past so many steps, little is gained. */
const MOST_ROUNDS = 200;
const MOST_STEPS = 1200;

/**
 * Rounds and steps by how much one of them costs: a lot of 16 chargers gets all of them, a panel of 240 fewer, and so do
 * panels of 24 where there are 50, for what is gained grows slower than the effort.
 */
function effortFor({ edges }: Lattice, circuits: number, share: number): Omit<Effort, 'mayGoOn'> {
  const within = (budget: number, one: number, most: number): number =>
    Math.max(12, Math.round(Math.min(most * Math.sqrt(share), (budget * share) / one)));
  return {
    rounds: within(8e6, edges.length, MOST_ROUNDS * circuits),
    steps: within(2e7, circuits * edges.length, MOST_STEPS),
  };
}

/**
 * Raceways from one piece of equipment to the ends of its circuits, over the lattice of the lot, at the least cost that
 * the search finds; with `judging`, at the least of what it says of answers near that. A circuit whose way would be longer than it may be takes its shortest. Ends to which no way is held
 * are reached through the air. Lengths in feet.
 */
export function routeEnds(
  site: Site,
  equipment: Equipment,
  ends: readonly CircuitEnd[],
  place: 'overhead' | 'underground',
  make: RouteMake,
  judging: Judging | null,
): RoutedEnds {
  let all = routed(site, equipment, ends, place, make, { inAir: false }, judging);
  const left = (): readonly CircuitEnd[] => ends.filter(({ id }) => all.unreached.includes(id));
  const also = (more: RoutedEnds, isInAir: boolean): void => {
    all = {
      laid: [...all.laid, ...besideLaid(more.laid, all.laid)],
      joining: all.joining,
      cost: all.cost + more.cost,
      bound: all.bound + more.bound,
      unreached: more.unreached,
      inAir: isInAir ? all.unreached.filter((id) => !more.unreached.includes(id)) : all.inAir,
      floor: null,
    };
  };
  if (place !== 'overhead') return all;
  const isSteel = site.members.length > 0;
  if (left().length > 0 && isSteel) also(routed(site, equipment, left(), place, make, { inAir: true }, null), true);
  if (left().length === 0 || site.keepouts.length === 0) return all;
  // Round what is in the way, however far; where nothing leads there off the ground, in the ground and up at the box.
  for (const lies of isSteel ? (['underground'] as const) : (['overhead', 'underground'] as const)) {
    if (left().length === 0) break;
    const round = routed(site, equipment, left(), lies, make, { inAir: true, isWide: true }, null);
    also({ ...round, laid: lies === 'underground' ? round.laid.flatMap(outOfGround) : round.laid }, false);
  }
  return all;
}

/** How many times what hangers of a foot cost some dollars are. */
const timesHangers = (dollars: number, { raceway }: SharedPrice): number =>
  raceway > 0 ? Math.max(0, dollars) / raceway : 1;

function routed(
  site: Site,
  equipment: Equipment,
  ends: readonly CircuitEnd[],
  place: 'overhead' | 'underground',
  make: RouteMake,
  { inAir, isWide = false }: { readonly inAir: boolean; readonly isWide?: boolean },
  judging: Judging | null,
): RoutedEnds {
  const { price: prices, supportEvery, stringerFoot, cover, share, mayGoOn } = make;
  const { isBounded = true, isSearched = true, isFilling = true } = make;
  const price = prices[place];
  const boxes = ends.map(({ at }) => at);
  const { overhead, underground } = prices;
  const times = {
    // A conduit there is of another kind as well.
    ground: timesHangers(underground.raceway + underground.conduit - overhead.conduit, overhead),
    stringer: timesHangers(stringerFoot, overhead),
  };
  const room = isFilling ? standingRoom(site, equipment, new Set(ends.map(({ id }) => id))) : () => 0;
  const lattice = latticeOf(site, lotFrame(site), {
    equipment,
    boxes,
    place,
    supportEvery,
    cover,
    times,
    inAir,
    isWide,
    room,
  });
  const { points, edges, isNew, root, terminals } = lattice;
  const graph = homeGraph(points.length, edges);
  const search = arcSearch(graph);
  const lengths = Float64Array.from(graph.edge, (e) => graph.length[e]!);
  search.run(root, -1, lengths);
  const shortest = terminals.map((terminal) => search.distance[terminal]!);
  const reached = ends.flatMap((_, i) => (Number.isFinite(shortest[i]) ? [i] : []));
  const unreached = ends.filter((_, i) => !Number.isFinite(shortest[i])).map(({ id }) => id);
  if (reached.length === 0)
    return { laid: [], joining: 'straight on', cost: 0, bound: 0, unreached, inAir: [], floor: null };
  const own = reached.map((i) => terminals[i]!);
  const effort = effortFor(lattice, own.length, share);
  let isWhole = true;
  const found = sharedRoute(
    { nodes: points.length, root, terminals: own, edges, price },
    {
      ...effort,
      ...(!isBounded && { steps: 0 }),
      ...(!isSearched && { rounds: 0 }),
      keep: judging === null ? 1 : POOL,
      mayGoOn: () => {
        isWhole &&= mayGoOn();
        return isWhole;
      },
    },
  );
  const { first } = found;
  const lengthOf = (way: readonly number[]): number => way.reduce((sum, e) => sum + edges[e]![2], 0);
  const within = (ways: Ways): Ways =>
    reached.map((i, k) =>
      lengthOf(ways[k]!) > ends[i]!.most && shortest[i]! <= ends[i]!.most ? shortestWay(own[k]!) : ways[k]!,
    );
  const straights = (ways: Ways): Straights =>
    [...new Set(within(ways).flat())]
      .filter((e) => isNew[e])
      .sort((a, b) => a - b)
      .map((e) => [points[edges[e]![0]]!, points[edges[e]![1]]!, lattice.stringers.get(e) ?? []] as const);
  // Stopped on the way it is what it began with: less by a price a foot may be more when it is planned.
  const sought = isWhole ? found : first;
  const best =
    judging === null || !isWhole
      ? { ways: sought.edges, joining: 'straight on' as const }
      : searchPaid(
          {
            graph,
            points,
            root,
            terminals: own,
            price,
            isNew,
            judge: (ways, joining) => judging.of(straights(ways), joining),
          },
          [...[found, ...found.others].map(({ edges: ways }) => ways), first.edges],
          judging.rounds,
          mayGoOn,
          judging.tell,
        );
  const least = judging?.floor;
  const under = least
    ? leastUnder(least, { points, edges, isNew, root, terminals: own, ways: best.ways }, effort.steps, mayGoOn)
    : null;
  const counted = under?.ways.map((by, k) => ({
    id: ends[reached[k]!]!.id,
    feet: shortest[reached[k]!]!,
    counted: by,
  }));
  const floor = under && counted ? { least: under.least, ways: counted } : null;
  const [{ joining }, { cost }] = [best, sought];
  return { laid: straights(best.ways), joining, cost, bound: found.bound, unreached, inAir: [], floor };

  function shortestWay(terminal: number): number[] {
    search.run(root, terminal, lengths);
    const way: number[] = [];
    for (let node = terminal; node !== root; node = search.from[node]!) way.push(graph.edge[search.by[node]!]!);
    return way;
  }
}
