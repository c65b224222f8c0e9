import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Drop, Point2, Point3, Site } from '../../site/site.ts';
import { fewTogether } from '../cover/few-together.ts';
import { fewestColumns } from '../cover/set-cover.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { assignPlaces } from './assign-places.ts';
import { type DropMake, type HangingPlace, hangingPlaces } from './hanging-places.ts';
import { naturalPlace, strayOf } from './natural-place.ts';
import { coverer, shortOf } from './stalls-from-place.ts';

export interface ProposedDrop {
  readonly box: Point3;
  readonly retractor: Point3 | null;
  /** Ids of the stalls that it is for, one cord each. */
  readonly stalls: readonly string[];
}

export interface DropsProposal {
  readonly drops: readonly ProposedDrop[];
  /** Stalls that a drop which is there has room for. */
  readonly added: readonly { readonly drop: string; readonly stall: string }[];
  /** Proved: no fewer new drops at the places looked at would do. */
  readonly bound: number;
  /** Stalls that no place serves, and why. */
  readonly without: readonly { readonly stall: string; readonly says: string }[];
}

/**
 * The fewest new drops for the stalls that no charger serves: each stall covered as the rules want by a cord of its own
 * round all parked vehicles, no drop with more cords than it has room for. Places that something drawn can hold come
 * first; others only for stalls that those do not serve, or where nothing is drawn. Every drop that is there stays where
 * it is, and room left on it is used before a new one is made. Lengths in feet.
 * @param wanted of those stalls; all where it is not given
 */
export function proposeDrops(site: Site, make: DropMake, wanted?: ReadonlySet<string>): DropsProposal {
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
  const open = site.stalls.flatMap(({ id }, place) => (served.has(id) || wanted?.has(id) === false ? [] : [place]));
  const idOf = (i: number): string => site.stalls[open[i]!]!.id;
  const coveredFrom = remembering(coverer(site, open));
  const spare = roomLeft(site).map(({ drop, room }) => ({ drop, room, reached: coveredFrom(drop) }));
  const slots = spare.flatMap(({ reached, room }, k) => Array.from({ length: room }, () => ({ k, reached })));
  const seats = assignPlaces(open.map((_, i) => slots.flatMap(({ reached }, s) => (reached.includes(i) ? [s] : []))));
  const added = seats.flatMap((s, i) => (s < 0 ? [] : [{ drop: spare[slots[s]!.k]!.drop.id, stall: idOf(i) }]));

  const { all, inOrder, pairs } = hangingPlaces(
    site,
    make,
    open.map((place) => site.stalls[place]!),
    (place, i) => coveredFrom(hungAt(place, make)).includes(i),
  );
  const held = all.filter(({ isHeld }) => isHeld);
  const reachedFrom = (places: readonly HangingPlace[]): Reached[] =>
    places.flatMap((place) => {
      const stalls = coveredFrom(hungAt(place, make));
      return stalls.length > 0 ? [{ place, stalls }] : [];
    });
  const reached = reachedFrom(held);
  const isCovered = new Set(reached.flatMap(({ stalls }) => stalls));
  if (open.some((_, i) => !isCovered.has(i))) {
    const others = reachedFrom(all.filter(({ isHeld }) => !isHeld));
    // Where something holds a stall's drop, what nothing holds is no choice for that stall.
    for (const { place, stalls } of others) {
      const own = stalls.filter((i) => !isCovered.has(i));
      if (own.length > 0) reached.push({ place, stalls: own });
    }
  }
  for (const { stalls } of reached) for (const i of stalls) isCovered.add(i);

  const unseated = open.flatMap((_, i) => (seats[i]! < 0 && isCovered.has(i) ? [i] : []));
  const frame = lotFrame(site);
  const naturalTo = (stalls: readonly number[]): Point2 => {
    const own = stalls.length === 1 ? inOrder[stalls[0]!] : undefined;
    if (own) return [own.box[0], own.box[1]];
    return naturalPlace(
      stalls.map((i) => site.stalls[open[i]!]!),
      frame,
    );
  };
  const first = ({ stalls }: Reached): number => Math.min(...stalls);
  const left = new Set(unseated);
  const together = pairs.flatMap(({ place, stalls }): Reached[] =>
    (place.isHeld || held.length === 0) && stalls.every((i) => left.has(i)) ? [{ place, stalls }] : [],
  );
  const taken = new Set(together.map(({ place }) => place));
  for (const { stalls } of together) for (const i of stalls) left.delete(i);
  const drops = [
    ...together,
    ...placed(
      unseated.filter((i) => left.has(i)),
      reached.filter(({ place }) => !taken.has(place)),
      make.holds,
      naturalTo,
    ),
  ]
    .sort((a, b) => first(a) - first(b))
    .map(
      ({ place, stalls }): ProposedDrop => ({ box: place.box, retractor: place.retractor, stalls: stalls.map(idOf) }),
    );
  const given = new Set([...drops.flatMap(({ stalls }) => stalls), ...added.map(({ stall }) => stall)]);
  return {
    drops,
    added,
    bound: Math.min(drops.length, boundOf(open.length, seats, reached, spare, make.holds)),
    without: open.flatMap((stall, i) =>
      given.has(idOf(i)) ? [] : [{ stall: idOf(i), says: whyNot(site, stall, all, make) }],
    ),
  };
}

/** Stalls from places that were asked about before are not worked again. */
function remembering(coveredFrom: ReturnType<typeof coverer>): ReturnType<typeof coverer> {
  const known = new Map<string, number[]>();
  return (hung) => {
    const key = [...hung.box, ...(hung.retractor ?? []), hung.cord, hung.mount].join(' ');
    const before = known.get(key);
    if (before) return before;
    const found = coveredFrom(hung);
    known.set(key, found);
    return found;
  };
}

interface Reached {
  readonly place: HangingPlace;
  readonly stalls: readonly number[];
}

const hungAt = (
  { box, retractor }: Pick<HangingPlace, 'box' | 'retractor'>,
  { cord }: DropMake,
): Pick<Drop, 'box' | 'retractor' | 'cord'> => ({
  box: [...box],
  ...(retractor && { retractor: [...retractor] }),
  cord,
});

/** The drops that say they hold more cords than hang from them. */
function roomLeft(site: Site): { readonly drop: Drop; readonly room: number }[] {
  const hung = new Map<string, number>();
  for (const { drop } of site.chargers) hung.set(drop, (hung.get(drop) ?? 0) + 1);
  return site.drops.flatMap((drop) => {
    const room = (drop.holds ?? 1) - (hung.get(drop.id) ?? 0);
    return room > 0 ? [{ drop, room }] : [];
  });
}

/** Covers some stalls, and gives each drop the best place that is left. Should two want one place, the rest try again. */
function placed(
  wanted: readonly number[],
  reached: readonly Reached[],
  holds: number,
  naturalTo: (stalls: readonly number[]) => Point2,
): Reached[] {
  if (wanted.length === 0) return [];
  const place = new Map(wanted.map((i, k) => [i, k]));
  const within = reached.map(({ stalls }) => stalls.flatMap((i) => place.get(i) ?? []));
  if (new Set(within.flat()).size < wanted.length) return placed(coverable(wanted, within), reached, holds, naturalTo);
  const columns = fewTogether(within, holds);
  const sets = withoutTwice(fewestColumns(wanted.length, columns).chosen.map((c) => columns[c]!));
  const places = assignPlaces(
    sets.map((set) => {
      const natural = naturalTo(set.map((i) => wanted[i]!));
      const stray = (p: number): number => strayOf(reached[p]!.place, natural);
      const free = within.flatMap((own, p) => (set.every((i) => own.includes(i)) ? [p] : []));
      return free
        .map((p) => ({ p, far: stray(p) }))
        .sort((a, b) => a.far - b.far || a.p - b.p)
        .map(({ p }) => p);
    }),
  );
  const drops = sets.flatMap((set, s) =>
    places[s]! < 0 ? [] : [{ place: reached[places[s]!]!.place, stalls: set.map((i) => wanted[i]!) }],
  );
  const taken = new Set(places);
  const rest = sets.flatMap((set, s) => (places[s]! < 0 ? set.map((i) => wanted[i]!) : []));
  return [
    ...drops,
    ...placed(
      rest,
      reached.filter((_, p) => !taken.has(p)),
      holds,
      naturalTo,
    ),
  ];
}

const coverable = (wanted: readonly number[], within: readonly (readonly number[])[]): number[] => {
  const some = new Set(within.flat());
  return wanted.filter((_, k) => some.has(k));
};

/** Each stall in the first set that holds it. */
function withoutTwice(sets: readonly (readonly number[])[]): number[][] {
  const seen = new Set<number>();
  const once = sets.map((set) => set.filter((i) => !seen.has(i) && seen.add(i)));
  return once.filter(({ length }) => length > 0);
}

/** With room on drops that are there, each of these may stand for one of a cover that takes them as new ones. */
function boundOf(
  open: number,
  seats: readonly number[],
  reached: readonly Reached[],
  spare: readonly { readonly room: number; readonly reached: readonly number[] }[],
  holds: number,
): number {
  const columns = [
    ...fewTogether(
      reached.map(({ stalls }) => stalls),
      holds,
    ),
    ...spare.flatMap(({ room, reached: own }) => fewTogether([own], room)),
  ];
  const some = new Set(columns.flat());
  const place = new Map([...some].sort((a, b) => a - b).map((i, k) => [i, k]));
  if (open === 0 || place.size === 0) return 0;
  const { bound } = fewestColumns(
    place.size,
    columns.map((column) => column.map((i) => place.get(i)!)),
  );
  return Math.max(0, bound - (seats.some((s) => s >= 0) ? spare.length : 0));
}

/** The best that can be said of a stall that no place serves. */
function whyNot(site: Site, stall: number, places: readonly HangingPlace[], make: DropMake): string {
  const { at, id } = site.stalls[stall]!;
  const far = ({ box }: HangingPlace): number => Math.hypot(box[0] - at[0], box[1] - at[1]);
  const near = places
    .filter((place) => far(place) <= 2 * make.cord)
    .sort((a, b) => far(a) - far(b))
    .slice(0, 60);
  if (near.length === 0)
    return `Stall ${id} cannot be served: within ${printLength(2 * make.cord, site.units)} of it no drop may hang (vehicles, keep-outs, clear heights and boxes that are there).`;
  let best = { coverage: -1, margin: null as number | null };
  for (const place of near) {
    const short = shortOf(site, hungAt(place, make), stall);
    const gain = (short.margin ?? -1e9) - (best.margin ?? -1e9);
    if (short.coverage > best.coverage || (short.coverage === best.coverage && gain > 0)) best = short;
  }
  const share = `${Math.floor(100 * best.coverage)}% of the ways to park and inlets`;
  const cord = printLength(make.cord, site.units);
  if (best.coverage >= site.rules.coverage)
    return `Stall ${id} cannot be served: from the places within reach the cord goes through a keep-out that blocks cords, or other stalls have them.`;
  return best.margin === null
    ? `Stall ${id} cannot be served: from the best place a cord of ${cord} reaches ${share}, and to the rest there is no way round.`
    : `Stall ${id} cannot be served: from the best place a cord of ${cord} reaches ${share} and is ${printLength(Math.max(0, -best.margin), site.units)} short of the farthest.`;
}
