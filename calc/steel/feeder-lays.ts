import { kept } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { type FeederRoute, feederRoutesOf } from '../../routing/network/feeder-routes.ts';
import { distance } from '../../routing/plane/space.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Raceway, Site } from '../../routing/site/site.ts';
import { NO_LENGTH } from '../branches/way.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { laysBetween, type RacewayLay, type WayOfLays } from './lays.ts';

type FeederWay = NonNullable<FeederRoute['way']>;

/** What feeders hang along raceways: the same object as long as nothing of it is another. */
export interface FeederLays {
  readonly byRaceway: ReadonlyMap<string, readonly RacewayLay[]>;
}

/**
 * Where the conduits of new feeders hang along raceways, one for each set: those that stand have their supports. Of one
 * whose length the file gives nobody knows where it hangs.
 */
export function feederLays(site: Site, feeders: readonly FeederConduit[], tables: CodeTables): FeederLays {
  const routes = new Map(feederRoutesOf(site).routes.map(({ feeder, way }) => [feeder, way]));
  const laid = feeders.filter(
    ({ feeder, method, tradeSize }) =>
      feeder.existing !== true && routes.get(feeder.id) && (method === 'tray' || tradeSize !== null),
  );
  return allLays(
    laid,
    laid.map(({ feeder }) => routes.get(feeder.id)!),
    site.raceways,
    tables,
  );
}

const allLays = kept(
  (
    feeders: readonly FeederConduit[],
    ways: readonly FeederWay[],
    raceways: readonly Raceway[],
    tables: CodeTables,
  ): FeederLays => {
    const own = byId(raceways);
    const byRaceway = new Map<string, RacewayLay[]>();
    feeders.forEach(({ feeder, method, tradeSize, conductors }, i) => {
      const { metal, sets } = feeder.conductor;
      const way = wayOfFeeder(ways[i]!, own);
      const lays = laysBetween({ id: feeder.id, method, tradeSize, conductors, metal }, way, 0, way.at.at(-1)!, tables);
      for (const lay of lays) for (let set = 0; set < sets; set++) addTo(byRaceway, lay.raceway.id, lay);
    });
    return { byRaceway };
  },
);

/** The way of a feeder with its distances: legs of no length are gone, a tap is like the raceway before it. */
function wayOfFeeder({ path, legs }: FeederWay, raceways: ReadonlyMap<string, Raceway>): WayOfLays {
  const points = [path[0]!];
  const at = [0];
  const kept: string[] = [];
  for (let i = 0; i + 1 < path.length; i++) {
    const length = distance(path[i]!, path[i + 1]!);
    if (length <= NO_LENGTH) continue;
    points.push(path[i + 1]!);
    at.push(at.at(-1)! + length);
    kept.push(legs[i] ?? '');
  }
  return { points, at, legs: kept, like: kept.map((leg) => raceways.get(leg)) };
}
