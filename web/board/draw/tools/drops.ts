import { networkOf } from '../../../../routing/network/network.ts';
import { closestTap } from '../../../../routing/network/taps.ts';
import { type StallInReach, stallsInReach } from '../../../../routing/reach/stalls-in-reach.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Drop, Point3, Site } from '../../../../routing/site/site.ts';
import { addAll } from '../../../document/edits/add.ts';
import { chargerFor } from '../../../document/edits/charging/charger-for.ts';
import { type BoardDraft, type DrawTool, spotsOf } from '../draft.ts';
import type { DropsOptions } from '../options.ts';

/** A drop at a place, with the charger that hangs there and the stalls that it is to serve. */
export const dropsTool: DrawTool<DropsOptions> = {
  shape: 'point',
  atOnce: false,
  list: 'drops',
  edit: ({ file, site }, draft, options) => {
    const drop = dropOf(site, draft, options);
    if (!drop) return null;
    const own: Drop = { id: newId(file, 'D'), ...drop };
    const stalls = options.stalls ?? bestStall(site, drop);
    const charger = options.withCharger ? chargerFor(file, site, own, stalls, options) : null;
    return addAll(file, `Add drop ${own.id}`, { drops: [own], ...(charger && { chargers: [charger] }) });
  },
  words: ({ site }, draft, options) => {
    const drop = dropOf(site, draft, options);
    if (!drop) return [];
    const [best] = stallsInReach(site, drop);
    const words = [`box at ${printLength(drop.box[2], site.units)}`];
    if (!best) return [...words, 'no stall within reach'];
    const label = site.stalls.find(({ id }) => id === best.stall)?.label ?? best.stall;
    return [...words, `stall ${label}: ${Math.floor(best.coverage * 100 + 1e-9)}% covered`];
  },
  advice: (draft) =>
    draft.whole
      ? {
          action: 'Drops',
          next: 'Choose its stalls beside the board, then set it, or press the next.',
          keys: [
            ['Enter', 'set'],
            ['Esc', 'throw away'],
          ],
        }
      : {
          action: 'Drops',
          next: 'Press where a drop hangs; or give each selected stall its own, beside the board.',
          keys: [
            ['Z', 'elevation'],
            ['Alt', 'no snapping'],
            ['Esc', 'select'],
          ],
        },
  raised: (draft, z, options) => ({ draft, options: { ...options, elevation: z } }),
  after: (options) => ({ ...options, stalls: null }),
};

/** The drop that a draft and its options come to: its box is as high as the raceway that is near. */
export function dropOf(site: Site, draft: BoardDraft, options: DropsOptions): Omit<Drop, 'id'> | null {
  const [spot] = spotsOf(draft);
  if (!spot) return null;
  const [x, y] = spot.at;
  const { elevation, retractorBelow, cord, restHeight, mount } = options;
  const network = networkOf(site.raceways, site.rules.joinTolerance);
  const tap = mount === 'overhead' ? closestTap(network, [x, y, elevation], site.rules.tapLimit, () => true) : null;
  const z = tap && tap.point[2] > site.rules.clearHeight.stall ? tap.point[2] : elevation;
  const retractor: Point3 | null = retractorBelow === null || mount !== 'overhead' ? null : [x, y, z - retractorBelow];
  return {
    box: [x, y, z],
    ...(retractor && { retractor }),
    cord,
    ...(mount !== 'overhead' && { mount }),
    restHeight,
  };
}

/** The stalls that a drop would reach, the best first, with whether another charger serves them already. */
export function offered(site: Site, drop: Omit<Drop, 'id'>): readonly (StallInReach & { readonly served: boolean })[] {
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
  return stallsInReach(site, drop).map((each) => ({ ...each, served: served.has(each.stall) }));
}

/** The stall that a drop is best for, of those that no charger serves; of all where every one is served. */
function bestStall(site: Site, drop: Omit<Drop, 'id'>): readonly string[] {
  const all = offered(site, drop);
  const best = all.find(({ served }) => !served);
  return best ? [best.stall] : [];
}
