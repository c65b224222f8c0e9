import { kept } from '../../../routing/kept/kept.ts';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import type { Raceway, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { LayerName } from './layers.ts';

/** The ids of the raceways in which existing feeders lie and nothing that is installed: they stand already. */
const standing = kept((site: Site, runs: Plan['runs']): ReadonlySet<string> => {
  const old = new Set(site.feeders.flatMap(({ id, existing }) => (existing === true ? [id] : [])));
  if (old.size === 0) return NONE;
  const found = new Set<string>();
  const used = new Set(runs.flatMap(({ raceways }) => raceways));
  for (const { feeder, way } of feederRoutesOf(site).routes)
    for (const id of way?.raceways ?? []) (old.has(feeder) ? found : used).add(id);
  return new Set([...found].filter((id) => !used.has(id)));
});

const NONE: ReadonlySet<string> = new Set();

/** The layer of each raceway of a site: above or in the ground, new or existing. */
export function racewayLayers(site: Site, { runs }: Pick<Plan, 'runs'>): (raceway: Raceway) => RacewayLayer {
  const old = standing(site, runs);
  return ({ id, place }) =>
    place === 'underground'
      ? old.has(id)
        ? 'existingUnderground'
        : 'underground'
      : old.has(id)
        ? 'existingRaceways'
        : 'raceways';
}

/** The ids of existing raceways, and of the feeders that lie in them, by which a cut has them. */
export const existingInCut = (site: Site, { runs }: Pick<Plan, 'runs'>): ReadonlySet<string> =>
  new Set([...standing(site, runs), ...site.feeders.flatMap(({ id, existing }) => (existing === true ? [id] : []))]);

type RacewayLayer = Extract<LayerName, 'raceways' | 'underground' | 'existingRaceways' | 'existingUnderground'>;
