import { byId } from '../../../routing/site/look-up.ts';
import { newIds } from '../../../routing/site/new-id.ts';
import type { Charger, Equipment, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { feedingOf, feedingVolts, panelsOf } from '../feeding.ts';
import { USUAL_CHARGER } from '../usual.ts';
import type { CordToCome } from './drops-part.ts';

/**
 * A charger for each cord, fed by what `fromOf` names for its drop, else by the nearest panel; the file as it is where
 * there is no panel: chargers are not hung on a service as such.
 */
export function withChargers(
  file: SiteFile,
  cords: readonly CordToCome[],
  fromOf: ReadonlyMap<string, string>,
): SiteFile {
  const site = toSite(file);
  if (panelsOf(site).length === 0 || cords.length === 0) return file;
  const ids = newIds(file, 'EV', cords.length);
  const drops = byId(site.drops);
  const chargers = cords.map(({ drop, stall }, i): Charger => {
    const from: Equipment = feedingOf(site, drops.get(drop)!, fromOf.get(drop) ?? '')!;
    return { id: ids[i]!, drop, stalls: [stall], from: from.id, ...USUAL_CHARGER, volts: feedingVolts(from) };
  });
  return { ...file, chargers: [...(file.chargers ?? []), ...chargers] };
}
