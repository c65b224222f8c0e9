import type { Charger, Drop, Stall, Vehicle } from '../site/site.ts';
import { placeOf } from './by-id.ts';
import { type ChargerReach, chargerReach } from './charger-reach.ts';
import { type Field, touched } from './field.ts';
import { listMemo } from './list-memo.ts';
import type { Now } from './now.ts';
import type { Shared } from './shared.ts';

/** The reach of a charger with all that it was worked from, so that it can be kept while that stands. */
interface Kept extends ChargerReach {
  readonly charger: Charger;
  readonly drop: Drop;
  readonly stalls: readonly Stall[];
  readonly vehicles: readonly Vehicle[];
  readonly shared: Shared;
  // Brought forward as the site changes elsewhere: where the elements stand in its lists, and the last field that the
  // result was found to hold in.
  places: { drop: number; stalls: readonly number[]; of: readonly Stall[] };
  field: Field;
}

/** The reach of chargers, worked again only where something that had a say in it has changed. */
export const keptReach = listMemo<Charger, Now, Kept>(work, stillGood);

function work(charger: Charger, now: Now): Kept {
  const { site, field, shared } = now;
  const dropPlace = place(site.drops, charger.drop);
  const places = charger.stalls.map((id) => place(site.stalls, id));
  const drop = site.drops[dropPlace]!;
  const stalls = places.map((at) => site.stalls[at]!);
  const vehicles = places.map((at) => field.vehicles[at]!);
  const served = stalls.map((stall, i) => ({ stall, vehicle: vehicles[i]! }));
  const result = chargerReach({ charger, drop, stalls: served, field, shared });
  return {
    ...result,
    charger,
    drop,
    stalls,
    vehicles,
    shared,
    places: { drop: dropPlace, stalls: places, of: site.stalls },
    field,
  };
}

function stillGood(kept: Kept, now: Now): boolean {
  const { site, field, shared } = now;
  if (kept.shared !== shared) return false;
  const dropPlace = placeOf(site.drops, kept.charger.drop, kept.places.drop);
  if (site.drops[dropPlace] !== kept.drop) return false;
  let { stalls } = kept.places;
  if (kept.places.of !== site.stalls) {
    stalls = kept.charger.stalls.map((id, i) => placeOf(site.stalls, id, stalls[i]));
    if (stalls.some((at, i) => site.stalls[at] !== kept.stalls[i])) return false;
  }
  if (kept.field !== field) {
    if (touched(kept.seen, now.changesSince(kept.field))) return false;
    if (stalls.some((at, i) => field.vehicles[at] !== kept.vehicles[i])) return false;
    kept.field = field;
  }
  if (dropPlace !== kept.places.drop || kept.places.of !== site.stalls)
    kept.places = { drop: dropPlace, stalls, of: site.stalls };
  return true;
}

function place(list: readonly { readonly id: string }[], id: string): number {
  const at = placeOf(list, id);
  if (at < 0) throw new RangeError(`no element "${id}": a site's references are checked when it is read`);
  return at;
}
