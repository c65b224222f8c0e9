import { kept } from '../../kept/kept.ts';
import type { Equipment, Site } from '../../site/site.ts';
import type { LotFrame } from '../raceways/lattice/lot-frame.ts';
import type { EquipmentMake } from './place-finder.ts';
import { placeKey } from './place-key.ts';
import { standsFreeOfGround, standsFreeOfOthers } from './stands-free.ts';

/** Where equipment of one make stands free. */
export interface FreeTurns {
  /** Degrees at which it stands free at a place of the grid, in whole feet of the frame; null where at none. */
  readonly at: (u: number, v: number) => number | null;
  /** It is known already that at no turn it stands free there. */
  readonly isShut: (u: number, v: number) => boolean;
  /** Places that were looked at. */
  readonly looked: () => number;
}

const QUARTERS = [0, 180, 90, 270] as const;

/** What was found of a make on a ground: by place, for each turn one bit that it was looked at, and one that it is free. */
type Known = Map<number, number>;

/** Looked at in all four turns, and free in none. */
const ALL_LOOKED = 0b01_01_01_01;

/** The same ground is asked about with one piece of equipment after the other standing on it. */
const knownOn = kept(
  (
    _stalls: Site['stalls'],
    _aisles: Site['aisles'],
    _columns: Site['columns'],
    _keepouts: Site['keepouts'],
    _boundaries: Site['boundaries'],
  ): Map<string, Known> => new Map(),
);

/** Beyond so many makes on one ground, or places of one, they are looked at anew. */
const MOST = { makes: 4, places: 150_000 } as const;

/**
 * Turns at which equipment stands free: of the ground, which is looked at once for all equipment that comes to stand on
 * it, and of what stands there.
 */
export function freeTurns(
  site: Site,
  { least, entryHeight, ...rest }: EquipmentMake,
  { outOf, turn }: LotFrame,
): FreeTurns {
  const { stalls, aisles, columns, keepouts, boundaries, equipment: others, units } = site;
  const makes = knownOn(stalls, aisles, columns, keepouts, boundaries);
  const make = JSON.stringify([turn, rest, least]);
  if (!makes.has(make)) {
    if (makes.size >= MOST.makes) makes.clear();
    makes.set(make, new Map());
  }
  const ground = makes.get(make)!;
  const free = new Map<number, number | null>();
  const turnAt = (u: number, v: number, key: number): number | null => {
    const at = outOf([u, v]);
    const entry = [...at, entryHeight] as const;
    let known = ground.get(key) ?? 0;
    for (const [i, quarter] of QUARTERS.entries()) {
      const [looked, isFree] = [1 << (2 * i), 2 << (2 * i)];
      if (known & looked && !(known & isFree)) continue;
      const rotation = (turn + quarter) % 360;
      const stood: Equipment = { ...rest, id: ' ', at: [...at], entry, ...(rotation !== 0 && { rotation }) };
      if (!(known & looked)) {
        known |= looked | (standsFreeOfGround(site, stood, least) ? isFree : 0);
        if (ground.size >= MOST.places) ground.clear();
        ground.set(key, known);
      }
      if (known & isFree && standsFreeOfOthers(others, stood, least, units)) return rotation;
    }
    return null;
  };
  return {
    isShut: (u, v) => {
      const key = placeKey(u, v);
      const known = free.get(key);
      return known === undefined ? ground.get(key) === ALL_LOOKED : known === null;
    },
    looked: () => free.size,
    at: (u, v) => {
      const key = placeKey(u, v);
      const known = free.get(key);
      if (known !== undefined) return known;
      const found = turnAt(u, v, key);
      free.set(key, found);
      return found;
    },
  };
}
