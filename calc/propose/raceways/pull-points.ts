import { networkOf } from '../../../routing/network/network.ts';
import { tapsWithin } from '../../../routing/network/taps.ts';
import { insideOf, obstacleOf } from '../../../routing/plane/obstacle.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { distance } from '../../../routing/plane/space.ts';
import { newId } from '../../../routing/site/new-id.ts';
import type { Point3, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import { designOf } from '../../branches/design.ts';
import { type PullLimits, type PullPlace, placeAlong, pullPlaces } from '../../branches/pulls/pull-places.ts';
import { plan } from '../../plan/plan.ts';
import type { Conduit } from '../../plan-file/branches.ts';
import { feederConduits } from '../../supply/feeders/feeder-conduit.ts';
import { stretchesOf } from '../../supply/feeders/stretches.ts';
import { placeIn } from '../in-file.ts';

/** A pull point changes which conduits are troubled after it: so often are they looked at again. */
const ROUNDS = 12;

/**
 * The file with pull points where conduits and feeders bend too much or are too long to pull, as few as will do on each.
 * @param only in conduits with one of these chargers; without it in all, and for feeders
 */
export function withPullPoints(
  file: SiteFile,
  only?: ReadonlySet<string>,
): { readonly file: SiteFile; readonly added: number } {
  let next = file;
  let added = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const site = toSite(next);
    const { rules } = site;
    const open = openPlaces(site);
    const conduits = plan(site).conduits.filter(
      ({ circuits }) => only === undefined || circuits.some((charger) => only.has(charger)),
    );
    const places = branchPullPlaces(site, conduits, open);
    for (const { path } of only !== undefined ? [] : feederConduits(site, designOf(rules).tables))
      if (path !== null) places.push(...feederPullPlaces(path, places, site, open));
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

/** What is drawn is rounded, and a turned lot once more: what is pulled ends so much before its limit, feet. */
const ROUNDED = 1e-3;

const short = ({ bendLimit, pullLimit }: PullLimits): PullLimits => ({ bendLimit, pullLimit: pullLimit - ROUNDED });

/** Where the first pull point is wanted on each conduit of branches that bends too much or is too long to pull. */
export function branchPullPlaces(
  site: Site,
  conduits: readonly Conduit[],
  open: ReturnType<typeof openPlaces> = openPlaces(site),
): Point3[] {
  const { rules } = site;
  const places: Point3[] = [];
  for (const conduit of conduits) {
    if (conduit.bendDegrees <= rules.bendLimit + 1e-6 && conduit.length <= rules.pullLimit + 1e-9) continue;
    const [first] = pullPlaces(conduit.path, short(rules));
    const at = first && open(conduit.path, first);
    if (at && places.every((other) => distance(other, at) > rules.joinTolerance)) places.push(at);
  }
  return places;
}

/**
 * Where pull points are wanted on the way of a feeder, beside those that stand and those that others brought: each place is
 * looked for from the one before it as it was set, which may lie ahead of the bend that asked for it.
 */
function feederPullPlaces(
  path: readonly Point3[],
  others: readonly Point3[],
  { pullpoints, rules }: Site,
  open: ReturnType<typeof openPlaces>,
): readonly Point3[] {
  const fresh: Point3[] = [];
  while (fresh.length < MOST_ON_A_FEEDER) {
    const taken = [...pullpoints.map(({ at }) => at), ...others, ...fresh];
    const cuts = taken.map((at, i) => ({ id: `${i}`, at }));
    const next = stretchesOf(path, cuts, rules.joinTolerance)
      .flatMap((stretch) => {
        const [first] = pullPlaces(stretch.path, short(rules));
        return first ? [open(stretch.path, first)] : [];
      })
      .find((at) => taken.every((other) => distance(other, at) > rules.joinTolerance));
    if (next === undefined) break;
    fresh.push(next);
  }
  return fresh;
}

const MOST_ON_A_FEEDER = 100;

/** Steps back along a path from what covers a box in the ground, feet. */
const BACK = 0.5;
/** Half of a small box in the ground, feet: so much round its middle has to be free. Common practice, no source. */
const HALF = 0.5;

/** A box's middle and the middles of its sides. */
const ROUND = [
  [0, 0],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/**
 * Of a place on a path, where a box can be opened: there, or for one in the ground under equipment or a column as far
 * back as what stands on it reaches, and for one where a way leaves its raceway for equipment or a box, at that end of the
 * raceway. Nearer the last box is never too far, and what bends after it gets the next.
 */
function openPlaces(site: Site): (path: readonly Point3[], place: PullPlace) => Point3 {
  const { equipment, columns, rules } = site;
  const network = networkOf(site.raceways, rules.joinTolerance);
  const isOnRaceway = (at: Point3): boolean => tapsWithin(network, at, rules.joinTolerance).length > 0;
  const over = [
    ...columns.map(({ at, size, rotation = 0 }) => rectangleAt(at, size, rotation)),
    ...equipment.map(footprintOf),
  ].map(obstacleOf);
  const isShut = ([x, y, z]: Point3): boolean =>
    z < 0 && ROUND.some(([dx, dy]) => over.some((outline) => insideOf(outline, x + HALF * dx, y + HALF * dy)));
  return (path, { at, along }) => {
    if (!isOnRaceway(at)) return lastBefore(path, along).find(isOnRaceway) ?? at;
    if (!isShut(at)) return at;
    for (let far = along - BACK; far > 0; far -= BACK) {
      const back = placeAlong(path, far);
      if (!isShut(back)) return back;
    }
    return at;
  };
}

/** The corners of a path before so many feet along it, the last one first, without its start. */
function lastBefore(path: readonly Point3[], along: number): Point3[] {
  const corners: Point3[] = [];
  let far = 0;
  for (let i = 1; i < path.length; i++) {
    far += distance(path[i - 1]!, path[i]!);
    if (far >= along) break;
    corners.push(path[i]!);
  }
  return corners.reverse();
}
