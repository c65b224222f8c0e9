import { distance } from '../../routing/plane/space.ts';
import { newId } from '../../routing/site/new-id.ts';
import type { Point3, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { designOf } from '../branches/design.ts';
import { pullPlaces } from '../branches/pull-places.ts';
import { plan } from '../plan/plan.ts';
import { feederConduits } from '../supply/feeders/feeder-conduit.ts';
import { placeIn } from './in-file.ts';

/** A pull point changes which conduits are troubled after it: so often are they looked at again. */
const ROUNDS = 12;

/** The file with pull points where conduits and feeders bend too much or are too long to pull, as few as will do on each. */
export function withPullPoints(file: SiteFile): { readonly file: SiteFile; readonly added: number } {
  let next = file;
  let added = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const site = toSite(next);
    const { rules } = site;
    const places: Point3[] = [];
    for (const conduit of plan(site).conduits) {
      if (conduit.bendDegrees <= rules.bendLimit + 1e-6 && conduit.length <= rules.pullLimit + 1e-9) continue;
      const [first] = pullPlaces(conduit.path, rules);
      if (first && places.every((other) => distance(other, first.at) > rules.joinTolerance)) places.push(first.at);
    }
    for (const { path } of feederConduits(site, designOf(rules).tables))
      for (const { at } of path === null ? [] : pullPlaces(path, rules))
        if (places.every((other) => distance(other, at) > rules.joinTolerance)) places.push(at);
    const fresh = places.filter((at) => site.pullpoints.every((other) => distance(other.at, at) > rules.joinTolerance));
    if (fresh.length === 0) break;
    for (const at of fresh)
      next = {
        ...next,
        pullpoints: [...(next.pullpoints ?? []), { id: newId(next, 'PB'), at: placeIn(file.units, at) }],
      };
    added += fresh.length;
  }
  return { file: next, added };
}
