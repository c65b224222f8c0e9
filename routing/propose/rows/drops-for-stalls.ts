import { networkOf } from '../../network/network.ts';
import { closestTap, tapsWithin } from '../../network/taps.ts';
import { cordStart } from '../../reach/cords/cord-start.ts';
import { fieldOf, obstaclesFor, vehicleUnder } from '../../reach/field.ts';
import { holdsPoint } from '../../reach/keepout.ts';
import { casesIn, inletsAt, MARGIN_TIE, stallReach } from '../../reach/stall-reach.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Point2, Point3, Site, Stall } from '../../site/site.ts';
import { vehicleOf } from '../../standing/parked.ts';

/** What drops are wished for. Lengths in feet. */
export interface DropWish {
  readonly cord: number;
  /** How far the retractor hangs below the box; null hangs the cord from the box. */
  readonly retractorBelow: number | null;
  /** Elevation of a box that no raceway is near. */
  readonly elevation: number;
  /** Equipment that is to feed them, whose raceways the boxes seek; null seeks any. */
  readonly from: string | null;
}

export interface DropPlace {
  readonly stall: string;
  readonly box: Point3;
  readonly retractor: Point3 | null;
  readonly coverage: number;
  /** From the box to the closest raceway, feet; null where that is farther than a tap may be. */
  readonly tap: number | null;
}

/** Parts of a stall's depth that a stripe is tried at, besides where raceways cross it. */
const PARTS = 24;
const NEAREST_PART = 5;
/** Boxes are kept so far apart, feet, that both can be mounted. */
const APART = 1;
/** Taps that differ by less than this, feet, are as good as each other. */
const ALIKE = 0.25;

interface Candidate {
  readonly box: Point3;
  readonly retractor: Point3 | null;
  readonly tap: number | null;
}

/**
 * A place for a drop at each of some stalls, in their order: over one of its stripes and over no vehicle, in no keep-out
 * that blocks drops, as near to a raceway as can be, where the cord covers the stall as the rules want; where no place
 * does, the one that covers most. A stall for which nothing is found has no place in the answer. RangeError for a stall
 * that is not on the site.
 */
export function dropsForStalls(site: Site, stalls: readonly string[], wish: DropWish): DropPlace[] {
  const byId = new Map(site.stalls.map((stall) => [stall.id, stall]));
  const taken: Point3[] = site.drops.map(({ box }) => box);
  const tap = tapper(site, wish);
  return stalls.flatMap((id): DropPlace[] => {
    const stall = byId.get(id);
    if (!stall) throw new RangeError(`no stall "${id}"`);
    const place = placeFor(site, stall, wish, taken, tap);
    if (place) taken.push(place.box);
    return place ? [place] : [];
  });
}

type Tapper = (at: Point2) => { readonly z: number; readonly tap: number | null };

/** How high a box over a point of the plan hangs: at its raceway's elevation, so that its tap is level. */
function tapper(site: Site, { elevation, from }: DropWish): Tapper {
  const network = networkOf(site.raceways, site.rules.joinTolerance);
  const entry = site.equipment.find(({ id }) => id === from)?.entry;
  const own = entry ? tapsWithin(network, entry, site.rules.tapLimit) : [];
  const components = new Set(own.map(({ leg }) => network.component[network.legs.rank[leg]!]!));
  const isOpen = (component: number): boolean => components.size === 0 || components.has(component);
  const lowest = Math.max(site.rules.clearHeight.stall, site.rules.clearHeight.van);
  return ([x, y]) => {
    const first = closestTap(network, [x, y, elevation], site.rules.tapLimit + 4, isOpen);
    const z = first && first.point[2] >= lowest ? first.point[2] : elevation;
    const found = closestTap(network, [x, y, z], site.rules.tapLimit, isOpen);
    return { z, tap: found?.length ?? null };
  };
}

function placeFor(site: Site, stall: Stall, wish: DropWish, taken: readonly Point3[], tap: Tapper): DropPlace | null {
  const field = fieldOf(site);
  const { rules } = site;
  const vehicle = vehicleOf(stall, site);
  const cases = casesIn(stall, vehicle);
  const inlets = inletsAt(stall, vehicle, rules.headClearance, cases);
  const blocks = site.keepouts.filter((keepout) => keepout.blocks.includes('drop'));
  const candidates = stripes(stall)
    .flatMap((stripe) => along(site, stripe))
    .map((at): Candidate => {
      const { z, tap: length } = tap(at);
      const retractor: Point3 | null = wish.retractorBelow === null ? null : [...at, z - wish.retractorBelow];
      return { box: [...at, z], retractor, tap: length };
    })
    .filter(
      ({ box, retractor }) =>
        !blocks.some((keepout) => holdsPoint(keepout, box) || holdsPoint(keepout, retractor ?? box)),
    )
    .filter(({ box }) =>
      taken.every((other) => Math.hypot(other[0] - box[0], other[1] - box[1], other[2] - box[2]) >= APART),
    )
    .filter(({ box }) => !vehicleUnder(field, [box[0], box[1]]))
    .sort((a, b) => rankOf(a) - rankOf(b));
  let best: (DropPlace & { readonly margin: number; readonly rank: number }) | null = null;
  for (const candidate of candidates) {
    const rank = rankOf(candidate);
    // The next are farther from a raceway than one that covers the stall.
    if (best && best.coverage >= rules.coverage - MARGIN_TIE && rank > best.rank) break;
    const { box, retractor } = candidate;
    const start = cordStart({ box, cord: wish.cord, ...(retractor && { retractor }) }, rules);
    const reached = stallReach(start, cases, inlets, obstaclesFor(field, [start.from[0], start.from[1]]));
    const { coverage } = reached;
    const margin = reached.margin ?? Number.NEGATIVE_INFINITY;
    const better =
      !best || coverage > best.coverage + 1e-9 || (coverage > best.coverage - 1e-9 && margin > best.margin + 1e-9);
    if (better) best = { stall: stall.id, box, retractor, coverage, tap: candidate.tap, margin, rank };
  }
  return (
    best && { stall: best.stall, box: best.box, retractor: best.retractor, coverage: best.coverage, tap: best.tap }
  );
}

const rankOf = ({ tap }: Candidate): number => (tap === null ? Number.MAX_SAFE_INTEGER : Math.round(tap / ALIKE));

/** The stripes to the right and to the left of a stall, from entry to head. */
function stripes(stall: Stall): [Point2, Point2][] {
  const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stall);
  return [
    [entryRight, headRight],
    [entryLeft, headLeft],
  ];
}

/** Places along a stripe: even parts of it, and where raceways cross it in plan. */
function along(site: Site, [from, to]: [Point2, Point2]): Point2[] {
  const parts: number[] = [];
  for (let i = NEAREST_PART; i < PARTS; i++) parts.push(i / PARTS);
  for (const { path } of site.raceways)
    for (let i = 1; i < path.length; i++) {
      const t = crossing(from, to, path[i - 1]!, path[i]!);
      if (t !== null && t >= NEAREST_PART / PARTS && t <= 1) parts.push(t);
    }
  return parts.map((t) => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]);
}

/** Where along a stripe a leg crosses it in plan; null where it does not. */
function crossing([ax, ay]: Point2, [bx, by]: Point2, p: Point3, q: Point3): number | null {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, q[0] - p[0], q[1] - p[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-9) return null;
  const t = ((p[0] - ax) * vy - (p[1] - ay) * vx) / cross;
  const s = ((p[0] - ax) * uy - (p[1] - ay) * ux) / cross;
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? t : null;
}
