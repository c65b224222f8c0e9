import type { Equipment, Point2, Site } from '../../site/site.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { type Canopies, canopiesOf } from './canopies.ts';
import { gapsOf } from './groups.ts';
import {
  type End,
  type EquipmentMake,
  type EquipmentPlace,
  type Gaps,
  type PlaceFinder,
  placeFinder,
  type Wish,
} from './place-finder.ts';

/** What a piece for so many circuits counts as, in feet of branch: itself, a foot of its feeder, and of the trench. */
export interface PieceWeight {
  readonly itself: number;
  readonly feeder: number;
  readonly trench: number;
}

export interface PlacedEquipment {
  readonly equipment: Omit<Equipment, 'id'>;
  /** Places in the list of ends of those that it is for, and how many circuits they have. */
  readonly ends: readonly number[];
  readonly circuits: number;
  /** Of their branches in all and of the longest, along the lot and square to it, feet. */
  readonly total: number;
  readonly longest: number;
  /** To what feeds it, likewise. */
  readonly feeder: number;
  /** Of branches in the ground to canopies that it does not stand by, feet. */
  readonly dug: number;
}

/** Ends that want new equipment, and what that is. */
export interface EquipmentAsked {
  readonly site: Site;
  readonly ends: readonly End[];
  readonly make: EquipmentMake;
  /** Feet of a branch at most. */
  readonly most: number;
  /** A piece for so many circuits; null where none takes so many. */
  readonly weigh: (circuits: number) => PieceWeight | null;
  /** What feeds it; null where nothing does. */
  readonly source: Point2 | null;
  /** What else a piece that stands so has to be good for, on a site with those before it. */
  readonly isGood: (site: Site, piece: Omit<Equipment, 'id'>) => boolean;
}

/** What is wished of a place for some of the ends. */
export function wishFor({ most, source }: EquipmentAsked, canopies: Canopies, gaps: Gaps) {
  return (
    own: readonly number[],
    { feeder, trench }: PieceWeight,
    trenches: readonly Point2[],
    step: number,
  ): Wish => ({
    most,
    fedBy: source && { at: source, feeder, trench, trenches },
    by: canopies.under(own),
    trench,
    gaps,
    step,
  });
}

export interface PlacedGroups {
  readonly placed: readonly PlacedEquipment[];
  /** Of all that was placed: pieces, feeders, trenches and branches, in feet of branch. */
  readonly total: number;
  readonly looked: number;
  readonly without: readonly number[];
}

/** How a place is found for a piece, the so manieth, by what is wished of it. */
type Seek = (
  finder: PlaceFinder,
  ends: readonly End[],
  wish: Wish,
  isGood: Wish['isGood'],
  k: number,
) => EquipmentPlace | null;

/**
 * A piece placed for each of some groups of ends, one after the other, each clear of those before it.
 * @param groups places in the list of ends
 */
export function placeGroups(asked: EquipmentAsked, groups: readonly (readonly number[])[], seek: Seek): PlacedGroups {
  const { site, ends, make, weigh } = asked;
  const { into } = lotFrame(site);
  const at = ends.map((one) => one.at);
  const wish = wishFor(asked, canopiesOf(site, at), gapsOf(at.map(([x, y]) => into([x, y]))));
  const placed: PlacedEquipment[] = [];
  const without: number[] = [];
  const trenches: Point2[] = [];
  let total = 0;
  let now = site;
  let looked = 0;
  for (const [k, own] of groups.entries()) {
    const circuits = own.reduce((sum, i) => sum + ends[i]!.circuits, 0);
    const weight = weigh(circuits);
    const finder = placeFinder(now, make);
    const before = now;
    const isGood: Wish['isGood'] = (one) => asked.isGood(before, madeAt(make, one));
    const theirs = own.map((i) => ends[i]!);
    const place = weight && seek(finder, theirs, wish(own, weight, trenches, 1), isGood, k);
    looked += finder.looked();
    if (place === null || weight === null) {
      without.push(...own);
      continue;
    }
    const equipment = madeAt(make, place);
    placed.push({
      equipment,
      ends: [...own].sort((a, b) => a - b),
      circuits,
      total: place.total,
      longest: place.longest,
      feeder: place.feeder,
      dug: place.dug,
    });
    trenches.push(place.at);
    total += place.weighed + weight.itself;
    now = { ...now, equipment: [...now.equipment, { ...equipment, id: ` ${placed.length}` }] };
  }
  return { placed, total, looked, without };
}

/** A piece of equipment as it stands at a place. */
export const madeAt = (
  { entryHeight, least: _, ...rest }: EquipmentMake,
  { at, rotation }: Pick<EquipmentPlace, 'at' | 'rotation'>,
): Omit<Equipment, 'id'> => ({
  ...rest,
  at: [...at],
  ...(rotation !== 0 && { rotation }),
  entry: [...at, entryHeight],
});

/**
 * Equipment that was placed, each piece so many whole feet along the lot and square to it from where it stood; null where
 * one of them does not stand free there, or not near enough.
 * @param by of each piece; those that are not named stay
 */
export function shiftedEquipment(
  asked: EquipmentAsked,
  placed: readonly PlacedEquipment[],
  by: ReadonlyMap<number, Point2>,
): PlacedGroups | null {
  const { into } = lotFrame(asked.site);
  const groups = placed.map(({ ends }) => ends);
  const found = placeGroups(asked, groups, (finder, ends, wish, isGood, k) => {
    const [u, v] = into(placed[k]!.equipment.at);
    const [du, dv] = by.get(k) ?? [0, 0];
    const at: Point2 = [Math.round(u) + du, Math.round(v) + dv];
    return finder.stands(ends, by.has(k) && isGood ? { ...wish, isGood } : wish, at);
  });
  return found.without.length === 0 ? found : null;
}
