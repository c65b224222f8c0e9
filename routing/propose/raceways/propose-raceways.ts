import type { Run } from '../../network/run.ts';
import { runsOf } from '../../network/runs.ts';
import { printLength } from '../../site/feet-inches.ts';
import { byId } from '../../site/look-up.ts';
import type { Charger, Equipment, Point3, Raceway, Site } from '../../site/site.ts';
import { arcSearch } from '../shared/arc-paths.ts';
import { homeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import { type Effort, sharedRoute } from '../shared-route.ts';
import { type Lattice, latticeOf } from './lattice.ts';
import { lotFrame } from './lot-frame.ts';
import { racewayPaths } from './raceway-paths.ts';

/** What a raceway is made of, and what a foot of it weighs against a foot of conductor. */
export interface RacewayMake {
  readonly method: Record<'overhead' | 'underground', Raceway['method']>;
  readonly price: Record<'overhead' | 'underground', SharedPrice>;
}

export type ProposedRaceway = Pick<Raceway, 'path' | 'method' | 'place'>;

export interface RacewaysProposal {
  readonly raceways: readonly ProposedRaceway[];
  /** Of all routes by the prices, and the least that any routes on the lines looked at could cost. */
  readonly cost: number;
  readonly bound: number;
  /** Chargers that no raceway reaches, and why. */
  readonly without: readonly { readonly charger: string; readonly says: string }[];
}

/** Steps of the search, by how much one of them costs: a lot of 16 chargers gets all of them, one of 240 fewer. */
function effortFor({ edges }: Lattice, circuits: number): Effort {
  const one = circuits * edges.length;
  const within = (budget: number): number => Math.max(12, Math.min(3000, Math.round(budget / one)));
  return { rounds: within(6e6), steps: within(3e7) };
}

/**
 * Raceways to the boxes of all chargers that have no run, from the equipment that feeds each: along the lot and square to
 * it, under the steel, up and over where something must stay clear, through no keep-out that blocks raceways, and on the
 * raceways that are there as far as they go. Routes share raceways and conduits at the least cost that the search finds
 * (`sharedRoute`); one that would be longer than its branch may be takes its shortest way. Lengths in feet.
 */
export function proposeRaceways(site: Site, make: RacewayMake): RacewaysProposal {
  const runs = new Map(runsOf(site).runs.map((run) => [run.charger, run]));
  const open = site.chargers.filter(({ id }) => runs.get(id)?.length === null);
  const feeding = site.equipment.filter(({ id }) => open.some(({ from }) => from === id));
  let now = site;
  let [cost, bound] = [0, 0];
  const without: { charger: string; says: string }[] = [];
  for (const equipment of feeding)
    for (const place of ['overhead', 'underground'] as const) {
      const own = open.filter((charger) => charger.from === equipment.id && placeOf(site, charger) === place);
      if (own.length === 0) continue;
      const routed = routes(now, equipment, own, place, make.price[place]);
      cost += routed.cost;
      bound += routed.bound;
      for (const charger of routed.unreached)
        without.push({
          charger,
          says: `No way was found from ${equipment.id} to the box of ${charger}: keep-outs block it.`,
        });
      const added = routed.paths.map(
        (path, i): Raceway => ({ id: `new ${now.raceways.length + i}`, path, method: make.method[place], place }),
      );
      now = { ...now, raceways: [...now.raceways, ...added] };
    }
  const told = new Set(without.map(({ charger }) => charger));
  const wanted = new Set(open.map(({ id }) => id));
  for (const run of runsOf(now).runs)
    if (wanted.has(run.charger) && !told.has(run.charger) && !run.ok)
      without.push({ charger: run.charger, says: whyNot(now, run) });
  return {
    raceways: now.raceways.slice(site.raceways.length).map(({ path, method, place }) => ({ path, method, place })),
    cost,
    bound,
    without,
  };
}

const dropOf = (site: Site, { drop }: Charger) => byId(site.drops).get(drop)!;

const placeOf = (site: Site, charger: Charger): 'overhead' | 'underground' =>
  dropOf(site, charger).mount === 'pedestal' ? 'underground' : 'overhead';

interface Routed {
  readonly paths: readonly Point3[][];
  readonly cost: number;
  readonly bound: number;
  readonly unreached: readonly string[];
}

function routes(
  site: Site,
  equipment: Equipment,
  chargers: readonly Charger[],
  place: 'overhead' | 'underground',
  price: SharedPrice,
): Routed {
  const lattice = latticeOf(site, lotFrame(site), {
    equipment,
    boxes: chargers.map((charger) => dropOf(site, charger).box),
    place,
  });
  const { points, edges, isNew, root } = lattice;
  const graph = homeGraph(points.length, edges);
  const search = arcSearch(graph);
  const lengths = Float64Array.from(graph.edge, (e) => graph.length[e]!);
  search.run(root, -1, lengths);
  const shortest = Float64Array.from(search.distance);
  const reached = chargers.map((_, i) => i).filter((i) => Number.isFinite(shortest[lattice.terminals[i]!]!));
  const unreached = chargers.filter((_, i) => !reached.includes(i)).map(({ id }) => id);
  if (reached.length === 0) return { paths: [], cost: 0, bound: 0, unreached };
  const terminals = reached.map((i) => lattice.terminals[i]!);
  const found = sharedRoute(
    { nodes: points.length, root, terminals, edges, price },
    effortFor(lattice, terminals.length),
  );
  const used = new Set<number>();
  reached.forEach((i, k) => {
    const charger = chargers[i]!;
    const { allowance, branchLimit } = site.rules;
    const most = (charger.branchLimit ?? branchLimit) - allowance.equipment - allowance.box;
    const length = found.edges[k]!.reduce((sum, e) => sum + edges[e]![2], 0);
    const way = length > most && shortest[terminals[k]!]! <= most ? shortestWay(terminals[k]!) : found.edges[k]!;
    for (const e of way) if (isNew[e]) used.add(e);
  });
  const ends = [...used].sort((a, b) => a - b).map((e) => [edges[e]![0], edges[e]![1]] as const);
  return { paths: racewayPaths(points, ends), cost: found.cost, bound: found.bound, unreached };

  function shortestWay(terminal: number): number[] {
    search.run(root, terminal, lengths);
    const way: number[] = [];
    for (let node = terminal; node !== root; node = search.from[node]!) way.push(graph.edge[search.by[node]!]!);
    return way;
  }
}

function whyNot(site: Site, run: Run): string {
  const { charger, from, conductorLength } = run;
  if (conductorLength === null) return `The box of ${charger} is out of reach of the raceways that were found.`;
  const limit = byId(site.chargers).get(charger)!.branchLimit ?? site.rules.branchLimit;
  return `The branch of ${charger} from ${from} would be ${printLength(conductorLength, site.units)} of conductor by the shortest way that was found, ${printLength(conductorLength - limit, site.units)} over its limit: equipment nearer by would do.`;
}
