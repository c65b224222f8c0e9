import { dropHeadroom } from '../../checks/drops/clear-height.ts';
import { dropFindings } from '../../checks/drops/drop-findings.ts';
import { addTo } from '../../lists/grouping.ts';
import { networkOf } from '../../network/network.ts';
import { closestTap } from '../../network/taps.ts';
import { distance } from '../../plane/space.ts';
import { nowOf } from '../../reach/kept-reach.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Drop, Point2, Point3, Raceway, Site, Stall } from '../../site/site.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { BELOW_MEMBER } from '../raceways/lattice/steel.ts';
import { type DropOrder, isUnderRoof, placesInOrder } from './in-order.ts';
import { pairsInOrder } from './pairs-in-order.ts';

/** How new drops are made. Lengths in feet. */
export interface DropMake {
  readonly cord: number;
  /** How far the retractor hangs below the box; null hangs the cord from the box. */
  readonly retractorBelow: number | null;
  /** Elevation of a box over which nothing is drawn that it could hang from. */
  readonly elevation: number;
  /** Cords that one drop has room for. */
  readonly holds: number;
  /** How those stand that serve a stall each. */
  readonly order?: DropOrder;
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

/** New drops stand no nearer than this to others where they can stand in order, feet. Common practice, no source. */
const APART = 3;
/** Lowered they hang under steel no lower than so many feet below where nothing is drawn: a tall van passes. Common practice, no source. */
const UNDER = 1;
/** Places are looked for at such steps, and kept so far apart, feet, that all of them can be mounted. */
const STEP = 1;
/** Shares of a stall's depth at which its stripes are tried; the middle, from which cords reach best, first. */
const PARTS = [0.5, 0.55, 0.45, 0.6, 0.4, 0.65, 0.35, 0.7, 0.3, 0.75, 0.25, 0.8, 0.85, 0.9, 0.95, 1];
/** Feet past the heads of stalls at which drops for several are tried, between cars that stand head to head. */
const PAST_HEADS = [0, 1, 2, 3, 4];
/** Of more stalls than these, feet between such places along the heads are more. */
const FEW_STALLS = 40;

export interface HangingPlaces {
  readonly all: HangingPlace[];
  /** Of each of the stalls asked about the place at which its drop stands in order with those of its row; null where none is. */
  readonly inOrder: readonly (HangingPlace | null)[];
  /** Those for two of them in order, by their places in that list; they are among all. */
  readonly pairs: readonly { readonly place: HangingPlace; readonly stalls: readonly [number, number] }[];
}

/**
 * Where drops may hang: in order along the rows, along overhead raceways, below members, and over the stripes of stalls; over no parked vehicle,
 * in no keep-out that blocks drops, as high as the clear heights want, and apart from the boxes that are there. Those
 * nearest to a raceway first.
 * @param wanted the stalls whose drops may stand in order
 * @param serves whether a cord from a box covers one of them, by its place in that list
 */
export function hangingPlaces(
  site: Site,
  make: DropMake,
  wanted: readonly Stall[],
  serves: (place: Pick<HangingPlace, 'box' | 'retractor'>, stall: number) => boolean,
): HangingPlaces {
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
  const low = Math.max(0, site.rules.hangReach - BELOW_MEMBER);
  /** Under high steel drops hang where a ladder still reaches, if they may hang so low and are not wanted at the steel. */
  const withoutLift = (z: number): number => {
    const { lift } = site.rules.workHeight;
    return !make.order?.isAtSteel && z > lift && z - lift <= low && lift >= lowest ? lift : z;
  };

  /** How high a box hangs over a point of the plan by what is drawn there, and how low it may. */
  const heightsOver = ([x, y]: Point2): { readonly usual: number; readonly least: number } => {
    const at: Point3 = [x, y, make.elevation];
    const laid = closestTap(raceways, at, tapLimit + 4, isOpen);
    const near = laid ?? closestTap(structure, at, tapLimit + 4, isOpen);
    const z = near?.point[2] ?? make.elevation;
    if (!near || z < lowest) return { usual: make.elevation, least: make.elevation };
    if (laid) return { usual: z, least: z };
    const usual = withoutLift(z);
    return { usual, least: Math.min(usual, Math.max(make.elevation - UNDER, lowest, z - low)) };
  };
  const over = (at: Point2): Point3 => [...at, heightsOver(at).usual];
  const frame = lotFrame(site);
  const retractorOf = ([x, y, z]: Point3): Point3 | null =>
    make.retractorBelow === null ? null : [x, y, z - make.retractorBelow];
  const isFree = (box: Point3): boolean => {
    const retractor = retractorOf(box);
    const drop: Drop = { id: '', box: [...box], ...(retractor && { retractor: [...retractor] }), cord: make.cord };
    return dropFindings(drop, field, shared).length + dropHeadroom(drop, { shared, stalls: site.stalls }).length === 0;
  };
  const order: DropOrder = make.order ?? { toward: null, isFlipped: false, over: 'middle' };
  const heightOver = (at: Point2): number => {
    const { usual, least } = heightsOver(at);
    return Math.max(least, usual - (order.lower ?? 0));
  };
  const canHang = (box: Point3, stalls: readonly number[]): boolean =>
    isFree(box) &&
    site.drops.every((other) => distance(other.box, box) >= APART) &&
    stalls.every((stall) => serves({ box, retractor: retractorOf(box) }, stall));
  const ordered = placesInOrder(wanted, frame, order, heightOver, (box, stall) => canHang(box, [stall]));
  const paired = make.holds < 2 ? [] : pairsInOrder(wanted, order, heightOver, canHang);
  const boxes = [
    ...[...overhead, ...beams].flatMap(({ path }) => along(path)),
    ...site.stalls.flatMap((stall) => overStripes(stall).map(over)),
    ...(make.holds > 1 ? pastHeads(site.stalls).map(over) : []),
  ];
  const spaced = spacing(site.drops.map(({ box }) => box));
  const tapOf = (box: Point3): number =>
    closestTap(raceways, box, tapLimit, isOpen)?.length ?? Number.POSITIVE_INFINITY;
  const placeAt = (box: Point3, tap: number, isHeld: boolean): HangingPlace => ({
    box,
    retractor: retractorOf(box),
    tap,
    isHeld: isHeld || tap < Number.POSITIVE_INFINITY || closestTap(structure, box, tapLimit, isOpen) !== null,
  });
  const inLine = (box: Point3): HangingPlace | null =>
    spaced(box) ? placeAt(box, tapOf(box), isUnderRoof(site.members, frame, box)) : null;
  const pairs = paired.flatMap(({ box, stalls }) => {
    const place = inLine(box);
    return place === null ? [] : [{ place, stalls }];
  });
  const inOrder = ordered.map((box) => (box === null ? null : inLine(box)));
  const places = [...pairs.map(({ place }) => place), ...inOrder.filter((place) => place !== null)];
  for (const box of boxes) if (isFree(box) && spaced(box)) places.push(placeAt(box, tapOf(box), false));
  return {
    all: places
      .map((place, i) => ({ place, i }))
      .sort(nearestFirst)
      .map(({ place }) => place),
    inOrder,
    pairs,
  };
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

/** Places along the heads of stalls and past them. */
function pastHeads(stalls: readonly Stall[]): Point2[] {
  const step = stalls.length > FEW_STALLS ? 4 * STEP : STEP;
  return stalls.flatMap((stall) => {
    const [entryRight, headRight, headLeft] = stallRectangle(stall);
    const [dx, dy] = [(headRight[0] - entryRight[0]) / stall.depth, (headRight[1] - entryRight[1]) / stall.depth];
    const wide = Math.hypot(headLeft[0] - headRight[0], headLeft[1] - headRight[1]);
    const count = Math.max(2, Math.round(wide / step));
    return PAST_HEADS.flatMap((past) =>
      Array.from({ length: count + 1 }, (_, k): Point2 => {
        const t = k / count;
        return [
          headRight[0] + t * (headLeft[0] - headRight[0]) + past * dx,
          headRight[1] + t * (headLeft[1] - headRight[1]) + past * dy,
        ];
      }),
    );
  });
}

/** Whether a point is a step from all before it, which it then joins. */
function spacing(given: readonly Point3[]): (at: Point3) => boolean {
  const cells = new Map<string, Point3[]>();
  const key = (x: number, y: number): string => `${x} ${y}`;
  const cell = (v: number): number => Math.floor(v / STEP);
  const put = (at: Point3): void => {
    const k = key(cell(at[0]), cell(at[1]));
    addTo(cells, k, at);
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
