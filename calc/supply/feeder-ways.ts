import { feederRoutesOf } from '../../routing/network/feeder-routes.ts';
import type { Finding } from '../../routing/site/finding.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Site } from '../../routing/site/site.ts';
import type { RacewayKind } from '../tables/code-tables.ts';
import { methodRaceway } from '../tables/lookup.ts';
import type { SupplyTree } from './supply-tree.ts';

/** How long the feeder into each node of a tree is, and in what it lies. */
export interface FeederWays {
  /** Feet; null where no feeder comes in, and where neither the file nor the raceways say. */
  readonly lengths: readonly (number | null)[];
  readonly kinds: readonly RacewayKind[];
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
  const methods = routes.length === 0 ? new Map() : byId(site.raceways);
  const lengths: (number | null)[] = [];
  const kinds: RacewayKind[] = [];
  for (const { feeder } of tree.nodes) {
    const way = feeder === null ? null : (wayOf.get(feeder.id) ?? null);
    lengths.push(feeder?.length ?? way?.length ?? null);
    if (feeder?.raceway !== undefined) kinds.push(methodRaceway(feeder.raceway));
    else kinds.push(way?.raceways.some((id) => methodRaceway(methods.get(id)!.method) === 'steel') ? 'steel' : 'PVC');
  }
  return { lengths, kinds, findings };
}
