import { dropFindings } from '../../checks/drops/drop-findings.ts';
import { nowOf } from '../../reach/kept-reach.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Drop, Point2, Point3, Site, Stall } from '../../site/site.ts';
import { fewTogether } from '../cover/few-together.ts';
import { fewestColumns } from '../cover/set-cover.ts';
import { assignPlaces } from './assign-places.ts';
import { coverer } from './stalls-from-place.ts';

/** How new pedestals are made. Lengths in feet. */
export interface PedestalMake {
  readonly cord: number;
  /** Elevation at which cords leave them. */
  readonly elevation: number;
  /** Cords that one has room for. */
  readonly holds: number;
  readonly restHeight: number;
}

export interface ProposedPedestal {
  readonly box: Point3;
  /** Ids of the stalls that it is for, one cord each. */
  readonly stalls: readonly string[];
}

export interface PedestalsProposal {
  readonly pedestals: readonly ProposedPedestal[];
  /** Ids of stalls that a cord on the ground reaches from no place. */
  readonly without: readonly string[];
}

/**
 * Shares of a stall's depth, from its entry, at which its stripes are tried; beside the middle of the car first, from where
 * a cord laid round it comes to each of its corners, then towards the head, out of the way of doors.
 */
const PARTS = [0.5, 0.55, 0.6, 0.45, 0.4, 0.65, 0.35, 0.7, 0.3, 0.75, 0.8, 0.9, 1];
/** Pedestals are kept so far apart, feet. Common practice, no source. */
const APART = 2;
/** Off the stripe and out of the stall, feet, where an access aisle lies: half of a pedestal. */
const ASIDE = 0.5;

/**
 * The fewest pedestals for some stalls, on or beside the stripes, so that a cord laid on the ground round all parked
 * vehicles covers each stall as the rules want, none with more cords than it has room for: over no vehicle, in no keep-out
 * that blocks drops, in no access aisle, and apart. Lengths in feet.
 * @param wanted ids of the stalls
 */
export function proposePedestals(site: Site, wanted: ReadonlySet<string>, make: PedestalMake): PedestalsProposal {
  const open = site.stalls.flatMap(({ id }, place) => (wanted.has(id) ? [place] : []));
  const idOf = (i: number): string => site.stalls[open[i]!]!.id;
  const coveredFrom = coverer(site, open);
  const standing = site.drops.map(({ box }) => box);
  const places = placesFor(
    site,
    open.map((place) => site.stalls[place]!),
    make,
  ).flatMap((box) => {
    if (standing.some((other) => Math.hypot(other[0] - box[0], other[1] - box[1]) < APART)) return [];
    const stalls = coveredFrom({ box: [...box], cord: make.cord, mount: 'pedestal' });
    return stalls.length > 0 ? [{ box, stalls }] : [];
  });
  const pedestals: ProposedPedestal[] = [];
  let left = open.map((_, i) => i);
  let free = places;
  while (left.length > 0) {
    const within = free.map(({ stalls }) => stalls.flatMap((i) => (left.includes(i) ? [left.indexOf(i)] : [])));
    const reached = new Set(within.flat());
    if (reached.size === 0) break;
    const [now, missed] = [left.filter((_, k) => reached.has(k)), left.filter((_, k) => !reached.has(k))];
    const rank = new Map(now.map((i, k) => [i, k]));
    const columns = fewTogether(
      free.map(({ stalls }) => stalls.flatMap((i) => rank.get(i) ?? [])),
      make.holds,
    );
    const seen = new Set<number>();
    const sets = fewestColumns(now.length, columns)
      .chosen.map((c) => columns[c]!.filter((k) => !seen.has(k) && seen.add(k)))
      .filter(({ length }) => length > 0)
      .map((set) => set.map((k) => now[k]!));
    const seats = assignPlaces(
      sets.map((set) => free.flatMap(({ stalls }, p) => (set.every((i) => stalls.includes(i)) ? [p] : []))),
    );
    const taken: Point3[] = [];
    const unseated: number[] = [];
    for (const [s, set] of sets.entries()) {
      const place = free[seats[s]!];
      if (place === undefined || taken.some((other) => isNear(other, place.box))) unseated.push(...set);
      else {
        taken.push(place.box);
        pedestals.push({ box: place.box, stalls: set.map(idOf) });
      }
    }
    if (taken.length === 0) break;
    free = free.filter(({ box }) => taken.every((other) => !isNear(other, box)));
    left = [...unseated, ...missed].sort((a, b) => a - b);
  }
  const order = new Map(open.map((_, i) => [idOf(i), i]));
  const first = ({ stalls }: ProposedPedestal): number => Math.min(...stalls.map((id) => order.get(id)!));
  const given = new Set(pedestals.flatMap(({ stalls }) => stalls));
  return {
    pedestals: pedestals.sort((a, b) => first(a) - first(b)),
    without: open.map((_, i) => idOf(i)).filter((id) => !given.has(id)),
  };
}

const isNear = (a: Point3, b: Point3): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < APART - 1e-9;

/** Where pedestals may stand, the best first: at equal parts of all stalls, so that those of a row stand in a line. */
function placesFor(site: Site, stalls: readonly Stall[], make: PedestalMake): Point3[] {
  const { field, shared } = nowOf(site);
  const seen = new Set<string>();
  const places: Point3[] = [];
  for (const part of PARTS)
    for (const stall of stalls)
      for (const [x, y] of beside(stall, part)) {
        const key = `${x.toFixed(2)} ${y.toFixed(2)}`;
        if (seen.has(key)) continue;
        seen.add(key);
        const box: Point3 = [x, y, make.elevation];
        const drop: Drop = { id: '', box: [...box], cord: make.cord, mount: 'pedestal', restHeight: make.restHeight };
        if (dropFindings(drop, field, shared).some(({ severity }) => severity === 'fail')) continue;
        places.push(box);
      }
  return places;
}

/** On both stripes of a stall at a part of its depth; of one with an accessible use outside of them, clear of stall and aisle. */
function beside(stall: Stall, part: number): Point2[] {
  const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stall);
  const aside = stall.use === undefined || stall.use === 'standard' ? 0 : ASIDE;
  const across = [entryRight[0] - entryLeft[0], entryRight[1] - entryLeft[1]] as const;
  const width = Math.hypot(...across);
  return [
    { from: entryRight, to: headRight, out: 1 },
    { from: entryLeft, to: headLeft, out: -1 },
  ].map(({ from, to, out }): Point2 => {
    const by = (out * aside) / width;
    return [
      tidy(from[0] + part * (to[0] - from[0]) + by * across[0]),
      tidy(from[1] + part * (to[1] - from[1]) + by * across[1]),
    ];
  });
}

/** To a ten-thousandth of a foot: finer than anything is set out. */
const tidy = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
