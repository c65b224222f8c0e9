import { feedingOf, feedingVolts } from '../../../../calc/propose/feeding.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import type { Charger, Drop, Equipment, Site, SiteFile } from '../../../../routing/site/site.ts';

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

/** A charger of that name at a drop. */
export function chargerOf(
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
