import { feedingOf, feedingVolts } from '../../../calc/propose/feeding.ts';
import { dropsForStalls } from '../../../routing/propose/rows/drops-for-stalls.ts';
import { newId, newIds } from '../../../routing/site/new-id.ts';
import type { Charger, Drop, Equipment, Site, SiteFile } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { Edit } from '../change/edit.ts';
import { addAll } from './add.ts';

/** What chargers are added. Lengths in feet. */
export interface ChargerWish {
  readonly amps: number;
  /** Null takes those of the equipment that feeds it. */
  readonly volts: number | null;
  readonly phases: 1 | 3;
  readonly pilot: boolean;
  /** Equipment that feeds them; one that is not there leaves it to the nearest that can. */
  readonly from: string;
  readonly cord: number;
  readonly retractorBelow: number | null;
  readonly restHeight: number;
  readonly elevation: number;
}

/** The charger of a new drop; null where there is no equipment to feed it. */
export function chargerFor(
  file: SiteFile,
  site: Site,
  drop: Pick<Drop, 'id' | 'box'>,
  stalls: readonly string[],
  wish: Pick<ChargerWish, 'amps' | 'volts' | 'phases' | 'pilot' | 'from'>,
): Charger | null {
  const from = feedingOf(site, drop, wish.from);
  return from && chargerOf(newId(file, 'EV'), drop.id, stalls, from, wish);
}

function chargerOf(
  id: string,
  drop: string,
  stalls: readonly string[],
  from: Equipment,
  { amps, volts, phases, pilot }: Pick<ChargerWish, 'amps' | 'volts' | 'phases' | 'pilot'>,
): Charger {
  return {
    id,
    drop,
    stalls: [...stalls],
    from: from.id,
    amps,
    volts: volts ?? feedingVolts(from),
    phases,
    ...(pilot && { pilot }),
  };
}

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
