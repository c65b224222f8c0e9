import { feedingOf } from '../../../../calc/propose/feeding.ts';
import { dropsForStalls } from '../../../../routing/propose/rows/drops-for-stalls.ts';
import { newIds } from '../../../../routing/site/new-id.ts';
import type { Drop, Site, SiteFile } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { Edit } from '../../change/edit.ts';
import { addAll } from '../add.ts';
import { type ChargerWish, chargerOf } from './charger-for.ts';

export interface Charged {
  readonly edit: Edit;
  /** Stalls for which no place was found. */
  readonly without: readonly string[];
  /** Stalls that no place covers as the rules want. */
  readonly short: readonly string[];
}

/**
 * Gives each of some stalls its own drop and charger, in their order, the drops where they reach the stall and are
 * near a raceway. Null where there is no equipment to feed them.
 */
export function chargeStalls(file: SiteFile, site: Site, stalls: readonly string[], wish: ChargerWish): Charged | null {
  const middle = site.stalls.find(({ id }) => id === stalls[Math.floor(stalls.length / 2)]);
  const from = middle && feedingOf(site, { box: [...middle.at, 0] }, wish.from);
  if (!from) return null;
  const places = dropsForStalls(site, stalls, { ...wish, from: from.id });
  const drops = newIds(file, 'D', places.length);
  const chargers = newIds(file, 'EV', places.length);
  const count = counted(places.length, 'drop and its charger', 'drops and their chargers');
  const edit = addAll(file, `Add ${count}`, {
    drops: places.map(
      ({ box, retractor }, i): Drop => ({
        id: drops[i]!,
        box,
        ...(retractor && { retractor }),
        cord: wish.cord,
        restHeight: wish.restHeight,
      }),
    ),
    chargers: places.map(({ stall }, i) => chargerOf(chargers[i]!, drops[i]!, [stall], from, wish)),
  });
  const placed = new Set(places.map(({ stall }) => stall));
  return {
    edit,
    without: stalls.filter((id) => !placed.has(id)),
    short: places.filter(({ coverage }) => coverage < site.rules.coverage - 1e-9).map(({ stall }) => stall),
  };
}
