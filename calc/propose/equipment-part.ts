import { branchesFrom, proposeEquipment } from '../../routing/propose/equipment/propose-equipment.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Equipment, Point3, Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { designOf } from '../branches/design.ts';
import type { PriceList } from '../prices/price-list.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { leastWorkingSpace } from '../tables/lookup.ts';
import { feedPanel, panelSource } from './feed-panel.ts';
import { panelsOf } from './feeding.ts';
import { equipmentId, equipmentInFile } from './new-equipment.ts';
import type { ProposalPart } from './part.ts';
import { feederWeight } from './route-prices.ts';
import { USUAL_CHARGER, USUAL_DROP, USUAL_PANELBOARD } from './usual.ts';

export interface EquipmentPart {
  readonly file: SiteFile;
  /** Which new equipment is for which drop. */
  readonly fromOf: ReadonlyMap<string, string>;
  readonly part: ProposalPart;
}

/**
 * Chargers that one panelboard takes: two spaces each, and 125 % of the line current that they draw in equal numbers on
 * its three pairs of lines, for they are continuous loads; each at its rating or at what a load calculation counts it for,
 * the larger (NEC 2023 220.57).
 */
function chargersAPanel({ continuous, vehicleSupply }: CodeTables): number {
  const { spaces, busAmps, volts } = USUAL_PANELBOARD;
  const amps = Math.max(USUAL_CHARGER.amps, vehicleSupply.unitLoadVa / volts);
  const each = (continuous.factor * amps * Math.sqrt(3)) / 3;
  return Math.min(Math.floor(spaces / 2), Math.floor(busAmps / each));
}

/** What the branches go to: drops, or where none hangs the middles of the stalls. */
function endsOf(site: Site): readonly { readonly id: string; readonly at: Point3 }[] {
  if (site.drops.length > 0) return site.drops.map(({ id, box }) => ({ id, at: box }));
  return site.stalls.map(({ id, at: [x, y] }) => ({ id, at: [x, y, USUAL_DROP.elevation] }));
}

/** New panelboards where the branches to all drops are shortest. What feeds chargers already, or can, stays as it is. */
export function equipmentPart(file: SiteFile, prices: PriceList): EquipmentPart {
  const site = toSite(file);
  const ends = endsOf(site);
  if (panelsOf(site).length > 0) return standing(file, site, prices);
  if (ends.length === 0)
    return none(file, 'There is nothing for equipment to feed: neither drops nor stalls are drawn.');
  const { entryHeight, size, ...rest } = USUAL_PANELBOARD;
  const { allowance, branchLimit } = site.rules;
  const cords = Math.max(1, ...site.drops.map(({ holds }) => holds ?? 1));
  const holds = Math.max(1, Math.floor(chargersAPanel(designOf(site.rules).tables) / cords));
  const from = panelSource(site, Math.min(holds, ends.length) * cords);
  const fedBy = from && {
    at: [from.source.entry[0], from.source.entry[1]] as const,
    weight: Math.round(feederWeight(prices, site.rules, from.conductor)),
  };
  const proposal = proposeEquipment(
    site,
    ends.map(({ at }) => at),
    { kind: 'panelboard', size, ...rest, entryHeight, least: leastWorkingSpace(designOf(site.rules).tables) },
    holds,
    branchLimit - allowance.equipment - allowance.box,
    fedBy,
  );
  let next = file;
  const fromOf = new Map<string, string>();
  const panels: { readonly id: string; readonly says: string }[] = [];
  for (const { equipment, boxes, total, longest, feeder } of proposal.placed) {
    const id = equipmentId(next, 'P');
    next = { ...next, equipment: [...(next.equipment ?? []), equipmentInFile(id, equipment, file.units)] };
    for (const i of boxes) fromOf.set(ends[i]!.id, id);
    const far = from ? `; ${feet(feeder, site)} from ${from.source.id}` : '';
    panels.push({
      id,
      says: `${id} for ${boxes.length} ${site.drops.length > 0 ? 'drops' : 'stalls'}: branches of ${feet(total, site)} in all along the lot, the longest ${feet(longest, site)}${far}.`,
    });
  }
  // All panels stand before the first transformer takes a place.
  const says = panels.flatMap(({ id, says: own }) => {
    const fed = feedPanel(next, id, from);
    next = fed.file;
    return [own, fed.says];
  });
  return {
    file: next,
    fromOf,
    part: {
      what: 'equipment',
      says: [
        ...says,
        `${proposal.looked} places were looked at. No other ${site.members.length > 0 ? 'by the steel ' : ''}that is clear of stalls, aisles, columns, keep-outs and working spaces has shorter branches to its stretch of the rows${fedBy ? `, a foot of feeder counting as ${fedBy.weight} of branch by ${prices.name}` : ''}; if they could stand anywhere it would be ${feet(proposal.anywhere, site)} in all.`,
      ],
      measure: {
        of: fedBy ? 'branches along the lot and feeders by their weight' : 'branches along the lot',
        value: proposal.total,
        bound: proposal.total,
        unit: 'ft',
      },
      without: proposal.without.map((i) => ({
        id: ends[i]!.id,
        says: `No free place is near enough to ${ends[i]!.id} for its branch limit.`,
      })),
    },
  };
}

const feet = (length: number, site: Site): string => printLength(length, site.units, { inchParts: 1, decimals: 2 });

const none = (file: SiteFile, says: string): EquipmentPart => ({
  file,
  fromOf: new Map(),
  part: { what: 'equipment', says: [says], measure: null, without: [] },
});

/** What stands is the designer's; how far it is from the best is said. */
function standing(file: SiteFile, site: Site, prices: PriceList): EquipmentPart {
  const says = panelsOf(site).flatMap((panel): string[] => {
    const fed = new Set(site.chargers.filter(({ from }) => from === panel.id).map(({ drop }) => drop));
    const boxes = site.drops.filter(({ id }) => fed.has(id)).map(({ box }) => box);
    if (boxes.length === 0) return [`${panel.id} stays where it stands; it feeds no drop yet.`];
    const { entry, id: _, at: __, rotation: ___, ...make } = panel;
    const others = { ...site, equipment: site.equipment.filter(({ id }) => id !== panel.id) };
    const fedBy = feederInto(site, panel, prices);
    const best = proposeEquipment(
      others,
      boxes,
      { ...make, entryHeight: entry[2], least: leastWorkingSpace(designOf(site.rules).tables) },
      boxes.length,
      Number.POSITIVE_INFINITY,
      fedBy,
    );
    const [place] = best.placed;
    if (!place) return [`${panel.id} stays where it stands; no free place was found for it.`];
    const far = (total: number, feeder: number): string =>
      `branches of ${feet(total, site)} in all along the lot${fedBy ? `, ${feet(feeder, site)} from what feeds it` : ''}`;
    const now = far(branchesFrom(site, entry, boxes), fedBy ? branchesFrom(site, entry, [[...fedBy.at, entry[2]]]) : 0);
    const at = place.equipment.at.map((value) => feet(value, site)).join(', ');
    const weighed = fedBy ? `, a foot of feeder counting as ${fedBy.weight} of branch` : '';
    return [
      `${panel.id} stays where it stands: ${now}. The best of ${best.looked} places is x, y ${at}: ${far(place.total, place.feeder)}${weighed}.`,
    ];
  });
  return { file, fromOf: new Map(), part: { what: 'equipment', says, measure: null, without: [] } };
}

/** What feeds a panel that stands, and how its feeder weighs. */
function feederInto(site: Site, { id }: Equipment, prices: PriceList) {
  const feeder = site.feeders.find(({ to }) => to === id);
  const from = feeder && site.equipment.find((one) => one.id === feeder.from);
  if (!from) return null;
  const [x, y] = from.entry;
  return { at: [x, y] as const, weight: Math.round(feederWeight(prices, site.rules, feeder.conductor)) };
}
