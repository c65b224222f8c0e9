import { kept } from '../../../routing/kept/kept.ts';
import { type FeederRoute, feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Feeder, Point3, Raceway, Site } from '../../../routing/site/site.ts';
import { fill } from '../../branches/home-runs/fill.ts';
import { isNipple } from '../../branches/home-runs/home-run.ts';
import type { ConduitConductor } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findConductorArea } from '../../tables/conductor-of.ts';
import type { TemperatureColumn } from '../../tables/table.ts';
import { type GroundWire, groundWire } from '../bonding/ground-wire.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import { treeOf } from '../tree/supply-lines.ts';
import type { SupplyNode } from '../tree/supply-tree.ts';
import { CARRYING } from './feeder-ampacity.ts';
import { feederAmbients, feederWays } from './feeder-ways.ts';

/** The conduits of a feeder: one for each set, all alike. */
export interface FeederConduit {
  readonly feeder: Feeder;
  readonly method: Method;
  /** Null for a tray, and where the tables cannot size it. */
  readonly tradeSize: string | null;
  /** Of each set, ft. */
  readonly length: number;
  /** What is in each. */
  readonly conductors: readonly ConduitConductor[];
  readonly fillPercent: number;
  readonly fillLimit: number;
  readonly fits: boolean;
  /** Along the raceways; null where the file gives the length alone. */
  readonly path: readonly Point3[] | null;
  /** Raceway that each leg of the path is made like: of a tap or a gap, the one before it, else the first. */
  readonly like: readonly Raceway[];
}

type FeederWay = NonNullable<FeederRoute['way']>;

/** Conduits of the feeders that the supply has, in the order of the feeders; none of those over the voltage of the tables. */
export function feederConduits(site: Site, tables: CodeTables): readonly FeederConduit[] {
  const routes = feederRoutesOf(site).routes;
  const ways = routes.map(({ way }) => way);
  const names = routes.map(({ feeder }) => feeder);
  const tree = treeOf(site);
  const lies = feederWays(site, tree);
  const ambients = feederAmbients(tables, site.rules, lies, tree);
  const { terminalC } = site.rules;
  return allConduits(site.feeders, names, ways, lies.lengths, ambients, terminalC, tree.nodes, site.raceways, tables);
}

const allConduits = kept(
  (
    feeders: readonly Feeder[],
    routed: readonly string[],
    ways: readonly (FeederWay | null)[],
    lengthInto: readonly (number | null)[],
    ambientInto: readonly number[],
    terminalC: TemperatureColumn,
    nodes: readonly SupplyNode[],
    raceways: Site['raceways'],
    tables: CodeTables,
  ): readonly FeederConduit[] => {
    const wires = wiresOf(nodes, tables);
    const routes = new Map(routed.map((feeder, i) => [feeder, ways[i]!]));
    const lengths = new Map(
      nodes.flatMap(({ feeder }, place) => (feeder === null ? [] : [[feeder.id, lengthInto[place] ?? 0] as const])),
    );
    const drawn = racewaysById(raceways);
    const places = new Map(nodes.map(({ feeder }, place) => [feeder?.id ?? '', place]));
    return feeders.flatMap((feeder) => {
      const length = lengths.get(feeder.id);
      const place = places.get(feeder.id);
      const way = routes.get(feeder.id) ?? null;
      const method = feeder.raceway ?? drawn.get(way?.raceways[0] ?? '')?.method ?? 'EMT';
      const count = wires.get(feeder.id);
      if (length === undefined || count === undefined || place === undefined) return [];
      const wire = groundWire(tables, nodes, place, terminalC, ambientInto[place]!);
      return [conduitOf(feeder, method, length, count, way, likeOf(way, drawn), wire?.use, wire?.size, tables)];
    });
  },
);

const racewaysById = kept((raceways: Site['raceways']): ReadonlyMap<string, Raceway> => byId(raceways));

const NOTHING: readonly Raceway[] = [];

function likeOf(way: FeederWay | null, drawn: ReadonlyMap<string, Raceway>): readonly Raceway[] {
  let last = drawn.get(way?.raceways[0] ?? '');
  if (way === null || last === undefined) return NOTHING;
  return way.legs.map((leg) => {
    last = drawn.get(leg ?? '') ?? last!;
    return last;
  });
}

/** Lines and neutral of each feeder; the primary of a transformer is a delta and has no neutral. */
const wiresOf = kept(
  (nodes: readonly SupplyNode[], tables: CodeTables): ReadonlyMap<string, number> =>
    new Map(
      nodes.flatMap((node) => {
        const { feeder, system, primary } = node;
        if (feeder === null || feederIsOver(tables, node)) return [];
        const { phases, neutral } = primary ?? system;
        const lines = phases === 3 ? 3 : 2;
        return [[feeder.id, primary === null && neutral !== null ? lines + 1 : lines] as const];
      }),
    ),
);

/** What a raceway is filled with: where more circuits share it than its own set, as if all were alike. */
function sharing(conductors: readonly ConduitConductor[], { conductor }: Feeder): readonly ConduitConductor[] {
  const times = Math.ceil((conductor.currentCarrying ?? CARRYING) / CARRYING);
  return times === 1 ? conductors : conductors.map((one) => ({ ...one, count: one.count * times }));
}

const conduitOf = kept(
  (
    feeder: Feeder,
    method: Method,
    length: number,
    count: number,
    way: FeederWay | null,
    like: readonly Raceway[],
    use: GroundWire['use'] | undefined,
    ground: string | undefined,
    tables: CodeTables,
  ): FeederConduit => {
    const { size, insulation } = feeder.conductor;
    const conductors: readonly ConduitConductor[] = [
      { use: 'line', size, insulation, count },
      ...(use === undefined || ground === undefined ? [] : [{ use, size: ground, insulation, count: 1 }]),
    ];
    const known = { feeder, method, length, conductors, path: way?.path ?? null, like };
    const sized = conductors.every((one) => findConductorArea(tables, one.insulation, one.size) !== undefined);
    if (method === 'tray' || !sized) return { ...known, tradeSize: null, fillPercent: 0, fillLimit: 0, fits: true };
    const { tradeSize, fillPercent, limitPercent, ok } = fill(tables, {
      method,
      conductors: sharing(conductors, feeder),
      nipple: isNipple(tables, length),
    });
    return { ...known, tradeSize, fillPercent, fillLimit: limitPercent, fits: ok };
  },
);
