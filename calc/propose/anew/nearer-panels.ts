import { byId } from '../../../routing/site/look-up.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { feedingVolts } from '../feeding.ts';
import { standingPanels } from '../panels/panel-room.ts';

/** So many other panels are tried. */
const MOST = 2;

/** Some chargers fed, all of them, from another panel of their volts that has room for them: the nearest to their boxes first. */
export function nearerPanels(
  file: SiteFile,
  site: Site,
  chargers: readonly string[],
): readonly { readonly panel: string; readonly file: SiteFile }[] {
  if (site.equipment.length < 2) return [];
  const moved = new Set(chargers);
  const own = site.chargers.filter(({ id }) => moved.has(id));
  const drops = byId(site.drops);
  const volts = new Set(own.map((one) => one.volts));
  const from = new Set(own.map((one) => one.from));
  return standingPanels(site)
    .filter(({ panel, room }) => !from.has(panel.id) && room >= own.length && volts.has(feedingVolts(panel)))
    .map(({ panel: { id, entry } }) => ({
      id,
      far: own.reduce((sum, { drop }) => {
        const { box } = drops.get(drop)!;
        return sum + Math.hypot(box[0] - entry[0], box[1] - entry[1]);
      }, 0),
    }))
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST)
    .map(({ id }) => ({
      panel: id,
      file: {
        ...file,
        chargers: (file.chargers ?? []).map((charger) => (moved.has(charger.id) ? { ...charger, from: id } : charger)),
      },
    }));
}
