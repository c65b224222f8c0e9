import { kept } from '../../kept/kept.ts';
import { steelOf } from '../../network/support/steel-near.ts';
import type { Member, Point2, Point3, Site } from '../../site/site.ts';
import { risersOf } from '../raceways/lattice/ground-ways.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { away } from '../raceways/lattice/steel.ts';
import { type Canopy, nearSteel, straight } from './place-weights.ts';
import { parcelAt, steelParcels } from './steel-parcels.ts';

/** The canopies of a site, and which of them each of some places hangs under; -1 where under none. */
export interface Canopies {
  readonly of: readonly number[];
  /** Those of some of the places, which are numbered among themselves. */
  readonly under: (own: readonly number[]) => readonly Canopy[];
  readonly haveRisers: boolean;
}

/** The same lists while the steel and the aisles are the same: what is found by them is kept with them. */
const parcelsOf = kept((members: Site['members'], aisles: Site['aisles']) => steelParcels({ members, aisles }));

export function canopiesOf(site: Site, places: readonly Point3[]): Canopies {
  const parcels = parcelsOf(site.members, site.aisles);
  const risers = parcels.length === 0 ? [] : risersOf(site, steelOf(site.members)).at;
  const { hangReach } = site.rules;
  const up = parcels.map((members: readonly Member[]): readonly Point2[] =>
    risers.filter((at) => members.some((member) => away(member, at) <= hangReach)),
  );
  const of = places.map(([x, y]) => parcelAt(parcels, [x, y]));
  return {
    of,
    under: (own) =>
      [...new Set(own.map((i) => of[i]!))]
        .filter((parcel) => parcel >= 0)
        .map((parcel) => ({
          members: parcels[parcel]!,
          risers: up[parcel]!,
          ends: own.flatMap((i, k) => (of[i] === parcel ? [k] : [])),
        })),
    haveRisers: risers.length > 0,
  };
}

/** Feet that branches from an entry to some boxes lie in the ground: to each canopy that it does not stand by, once. */
export function dugFrom(site: Site, entry: Point3, boxes: readonly Point3[]): number {
  const frame = lotFrame(site);
  const at = frame.into([entry[0], entry[1]]);
  const isBy = nearSteel(frame);
  return canopiesOf(site, boxes)
    .under(boxes.map((_, i) => i))
    .filter(({ members, risers }) => risers.length > 0 && !isBy(members, at))
    .reduce((sum, { risers }) => sum + Math.min(...risers.map((riser) => straight(at, frame.into(riser)))), 0);
}
