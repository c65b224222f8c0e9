import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Point3, Raceway, Site } from '../../../routing/site/site.ts';
import { hottestOn } from '../../branches/ambient.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { methodRaceway } from '../../tables/conductor-of.ts';
import type { RacewayKind } from '../../tables/table.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';

/** How long the feeder into each node of a tree is, and in what it lies. */
export interface FeederWays {
  /** Feet; null where no feeder comes in, and where neither the file nor the raceways say. */
  readonly lengths: readonly (number | null)[];
  readonly kinds: readonly RacewayKind[];
  /** Whether it lies outdoors all the way but for its end: as the file says, else where it is in the ground all the way. */
  readonly outdoors: readonly boolean[];
  /** Feet of its way in plan; null where its way is not drawn. */
  readonly levels: readonly (number | null)[];
  /** Raceways that it lies along; none where the file gives its length alone. */
  readonly along: readonly (readonly Raceway[])[];
  readonly findings: readonly Finding[];
}

/**
 * Lengths and raceways of the feeders: as the file gives them, else those of the way along the drawn raceways, of steel
 * where any of them is. A feeder of which neither says what it lies in is taken in PVC, as most underground feeders are
 * (common practice, no source).
 */
export function feederWays(site: Site, tree: SupplyTree): FeederWays {
  const { routes, findings } = feederRoutesOf(site);
  const wayOf = new Map(routes.map(({ feeder, way }) => [feeder, way]));
  const drawn: ReadonlyMap<string, Raceway> = routes.length === 0 ? new Map() : byId(site.raceways);
  const lengths: (number | null)[] = [];
  const kinds: RacewayKind[] = [];
  const outdoors: boolean[] = [];
  const levels: (number | null)[] = [];
  const along: (readonly Raceway[])[] = [];
  for (const { feeder } of tree.nodes) {
    const way = feeder === null ? null : (wayOf.get(feeder.id) ?? null);
    lengths.push(feeder?.length ?? way?.length ?? null);
    levels.push(way === null ? null : levelLength(way.path));
    const raceways = (way?.raceways ?? []).map((id) => drawn.get(id)!);
    along.push(raceways);
    const isBuried = raceways.length > 0 && raceways.every(({ place }) => place === 'underground');
    outdoors.push(feeder?.outdoors ?? isBuried);
    if (feeder?.raceway !== undefined) kinds.push(methodRaceway(feeder.raceway));
    else kinds.push(raceways.some(({ method }) => methodRaceway(method) === 'steel') ? 'steel' : 'PVC');
  }
  return { lengths, kinds, outdoors, levels, along, findings };
}

const levelLength = (path: readonly Point3[]): number =>
  path.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);

/**
 * Ambient, °C, of the hottest stretch of the feeder into each node, as branches have it (`hottestOn`); that of the site
 * where no feeder comes in, and for one of which no raceway is drawn.
 */
export const feederAmbients = (
  tables: CodeTables,
  rules: Site['rules'],
  { along }: FeederWays,
  { nodes }: SupplyTree,
): readonly number[] =>
  nodes.map(({ feeder }, place) =>
    feeder === null ? rules.ambientC : feederAmbient(tables, rules, feeder, along[place]!),
  );

/** Ambient of one feeder: a roof counts by the insulation of its own conductors. */
export const feederAmbient = (
  tables: CodeTables,
  { ambientC, placeAmbientC }: Site['rules'],
  { conductor: { insulation } }: Site['feeders'][number],
  along: readonly Raceway[],
  tell: Tell = SILENT,
): number => hottestOn(tables, { ambientC, placeAmbientC, insulation }, along, tell);
