import { placeFinder } from '../../../routing/propose/equipment/place-finder.ts';
import { branchesFrom } from '../../../routing/propose/equipment/propose-equipment.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Equipment, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import { panelsOf } from '../feeding.ts';
import { branchFootPrice, fedPrice } from './trial-price.ts';

/** What stands is the designer's; how far each panel is from the best place for what it feeds is said. */
export function standingPanelWords(site: Site, prices: PriceList): readonly string[] {
  const feet = (length: number): string => printLength(length, site.units, { inchParts: 1, decimals: 2 });
  return panelsOf(site).flatMap((panel): string[] => {
    const fed = new Set(site.chargers.filter(({ from }) => from === panel.id).map(({ drop }) => drop));
    const boxes = site.drops.filter(({ id }) => fed.has(id)).map(({ box }) => box);
    if (boxes.length === 0) return [`${panel.id} stays where it stands; it feeds no drop yet.`];
    const { entry, id: _, at: __, rotation: ___, ...make } = panel;
    const others = { ...site, equipment: site.equipment.filter(({ id }) => id !== panel.id) };
    const fedBy = feederInto(site, panel, prices);
    const finder = placeFinder(others, {
      ...make,
      entryHeight: entry[2],
      least: leastWorkingSpace(designOf(site.rules).tables),
    });
    const place = finder.find(
      boxes.map((at) => ({ at, circuits: 1 })),
      {
        most: FARTHEST,
        fedBy: fedBy && { ...fedBy, trench: 0, trenches: [] },
        by: site.members.length > 0 ? [{ members: site.members, risers: [], ends: boxes.map((_, i) => i) }] : [],
        trench: 0,
        gaps: { along: 0, at: [] },
        step: 1,
      },
    );
    if (!place) return [`${panel.id} stays where it stands; no free place was found for it.`];
    const far = (total: number, feeder: number): string =>
      `branches of ${feet(total)} in all along the lot${fedBy ? `, ${feet(feeder)} from what feeds it` : ''}`;
    const now = far(branchesFrom(site, entry, boxes), fedBy ? branchesFrom(site, entry, [[...fedBy.at, entry[2]]]) : 0);
    const at = place.at.map(feet).join(', ');
    const weighed = fedBy ? `, a foot of feeder counting as ${fedBy.feeder} of branch` : '';
    return [
      `${panel.id} stays where it stands: ${now}. The best of ${finder.looked()} places is x, y ${at}: ${far(place.total, place.feeder)}${weighed}.`,
    ];
  });
}

/** As far from the boxes as places are looked for, feet. */
const FARTHEST = 400;

/** What feeds a panel that stands, and how its feeder weighs. */
function feederInto(site: Site, panel: Equipment, prices: PriceList) {
  const feeder = site.feeders.find(({ to }) => to === panel.id);
  const from = feeder && site.equipment.find((one) => one.id === feeder.from);
  if (!from) return null;
  const [x, y] = from.entry;
  const { rules } = site;
  const price = fedPrice(rules, prices, from, { ...panel, kind: 'panelboard' }, feeder);
  return { at: [x, y] as const, feeder: Math.round((price.feeder + price.trench) / branchFootPrice(rules, prices)) };
}
