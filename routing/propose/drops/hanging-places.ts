import { dropHeadroom } from '../../checks/drops/clear-height.ts';
import { dropFindings } from '../../checks/drops/drop-findings.ts';
import { networkOf } from '../../network/network.ts';
import { closestTap } from '../../network/taps.ts';
import { distance } from '../../plane/space.ts';
import { nowOf } from '../../reach/now.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Drop, Point2, Point3, Raceway, Site, Stall } from '../../site/site.ts';
import { BELOW_MEMBER } from '../raceways/steel.ts';

/** How new drops are made. Lengths in feet. */
export interface DropMake {
  readonly cord: number;
  /** How far the retractor hangs below the box; null hangs the cord from the box. */
  readonly retractorBelow: number | null;
  /** Elevation of a box over which nothing is drawn that it could hang from. */
  readonly elevation: number;
  /** Cords that one drop has room for. */
  readonly holds: number;
}

/** A place at which a drop may hang. */
export interface HangingPlace {
  readonly box: Point3;
  readonly retractor: Point3 | null;
  /** To the closest raceway drawn overhead, feet; infinite where none is in reach of a tap. */
  readonly tap: number;
  /** A raceway or a member is near enough to hang it from. */
  readonly isHeld: boolean;
}

/** Places are looked for at such steps, and kept so far apart, feet, that all of them can be mounted. */
const STEP = 1;
/** Shares of a stall's depth at which its stripes are tried; the middle, from which cords reach best, first. */
const PARTS = [0.5, 0.55, 0.45, 0.6, 0.4, 0.65, 0.35, 0.7, 0.3, 0.75, 0.25, 0.8, 0.85, 0.9, 0.95, 1];

/**
 * Where drops may hang: along overhead raceways, below members, and over the stripes of stalls; over no parked vehicle,
 * in no keep-out that blocks drops, as high as the clear heights want, and apart from the boxes that are there. Those
 * nearest to a raceway first.
 */
export function hangingPlaces(site: Site, make: DropMake): HangingPlace[] {
  const { field, shared } = nowOf(site);
  const overhead = site.raceways.filter(({ place }) => place === 'overhead');
  const beams = site.members.map(
    ({ id, from, to }): Raceway => ({
      id,
      path: [from, to].map(([x, y, z]): [number, number, number] => [x, y, z - BELOW_MEMBER]),
      method: 'EMT',
      place: 'overhead',
    }),
  );
  const raceways = networkOf(overhead, site.rules.joinTolerance);
  const structure = networkOf(beams, site.rules.joinTolerance);
  const { tapLimit } = site.rules;
  const isOpen = (): boolean => true;
  const lowest = Math.max(site.rules.clearHeight.stall, site.rules.clearHeight.van) + (make.retractorBelow ?? 0);

  /** Over a point of the plan, as high as what is drawn there. */
  const over = ([x, y]: Point2): Point3 => {
    const at: Point3 = [x, y, make.elevation];
    const near = closestTap(raceways, at, tapLimit + 4, isOpen) ?? closestTap(structure, at, tapLimit + 4, isOpen);
    return near && near.point[2] >= lowest ? [x, y, near.point[2]] : at;
  };
  const boxes = [
    ...[...overhead, ...beams].flatMap(({ path }) => along(path)),
    ...site.stalls.flatMap((stall) => overStripes(stall).map(over)),
  ];
  const spaced = spacing(site.drops.map(({ box }) => box));
  const places: HangingPlace[] = [];
  for (const box of boxes) {
    const retractor: Point3 | null =
      make.retractorBelow === null ? null : [box[0], box[1], box[2] - make.retractorBelow];
    const drop: Drop = { id: '', box: [...box], ...(retractor && { retractor: [...retractor] }), cord: make.cord };
    if (dropFindings(drop, field, shared).length + dropHeadroom(drop, { shared, stalls: site.stalls }).length > 0)
      continue;
    if (!spaced(box)) continue;
    const tap = closestTap(raceways, box, tapLimit, isOpen)?.length ?? Number.POSITIVE_INFINITY;
    const isHeld = tap < Number.POSITIVE_INFINITY || closestTap(structure, box, tapLimit, isOpen) !== null;
    places.push({ box, retractor, tap, isHeld });
  }
  return places
    .map((place, i) => ({ place, i }))
    .sort(nearestFirst)
    .map(({ place }) => place);
}

interface Ranked {
  readonly place: HangingPlace;
  readonly i: number;
}

/** Taps that differ by less than a quarter of a foot are as good as each other. */
const rank = ({ tap }: HangingPlace): number => (tap < Number.POSITIVE_INFINITY ? Math.round(tap * 4) : 1e9);

const nearestFirst = (a: Ranked, b: Ranked): number => rank(a.place) - rank(b.place) || a.i - b.i;

/** Points along a path at even steps, its ends among them. */
function along(path: readonly Point3[]): Point3[] {
  return path.slice(1).flatMap((to, i): Point3[] => {
    const from = path[i]!;
    const steps = Math.max(1, Math.floor(distance(from, to) / STEP));
    return Array.from({ length: steps + 1 }, (_, k): Point3 => {
      const t = k / steps;
      return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1]), from[2] + t * (to[2] - from[2])];
    });
  });
}

function overStripes(stall: Stall): Point2[] {
  const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stall);
  return PARTS.flatMap((t) =>
    [[entryRight, headRight] as const, [entryLeft, headLeft] as const].map(
      ([from, to]): Point2 => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])],
    ),
  );
}

/** Whether a point is a step from all before it, which it then joins. */
function spacing(given: readonly Point3[]): (at: Point3) => boolean {
  const cells = new Map<string, Point3[]>();
  const key = (x: number, y: number): string => `${x} ${y}`;
  const cell = (v: number): number => Math.floor(v / STEP);
  const put = (at: Point3): void => {
    const k = key(cell(at[0]), cell(at[1]));
    cells.set(k, [...(cells.get(k) ?? []), at]);
  };
  for (const at of given) put(at);
  return (at) => {
    for (let x = cell(at[0]) - 1; x <= cell(at[0]) + 1; x++)
      for (let y = cell(at[1]) - 1; y <= cell(at[1]) + 1; y++)
        if (cells.get(key(x, y))?.some((other) => distance(other, at) < STEP - 1e-9)) return false;
    put(at);
    return true;
  };
}
