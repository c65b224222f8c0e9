import { kept } from '../../../routing/kept/kept.ts';
import { type EquipmentAsked, shiftedEquipment } from '../../../routing/propose/equipment/place-groups.ts';
import { proposeEquipment } from '../../../routing/propose/equipment/propose-equipment.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import type { CordToCome } from '../drops/drops-part.ts';
import { USUAL_PANELBOARD } from '../usual.ts';
import { branchEnds } from './branch-ends.ts';
import type { LoadWish } from './charger-amps.ts';
import { roomFinder } from './feed-panels.ts';
import { type PanelSource, panelSources } from './panel-source.ts';
import { type PanelWeights, panelWeights } from './panel-weights.ts';
import { type Shares, sharesOf } from './standing-share.ts';

/** Which equipment feeds which ends, and by what that was weighed. */
export interface EquipmentShares {
  readonly from: PanelSource | null;
  readonly weights: PanelWeights;
  /** Null where there is nothing to feed. */
  readonly shares: Shares | null;
  /** The same with some of the new panels, by their place in the list of them, moved by whole feet along the lot and square to it; null where one cannot stand so. */
  readonly shifted: (by: ReadonlyMap<number, Point2>) => Shares | null;
}

/**
 * Panels for the branches that are to come, by what it all weighs. Kept: ways to feed the same panels are asked about one
 * after the other.
 * @param more dollars that each new panel is weighed at beside its price
 * @param isAcross a panel may be for several canopies, through the ground
 * @param source by its id, of those that can feed new panels; the first unless said
 * @param metal of new feeders; that of the rules unless said
 */
export const equipmentShares = kept(
  (
    site: Site,
    prices: PriceList,
    cords: readonly CordToCome[] | null,
    load: LoadWish,
    more: number,
    isAcross: boolean,
    source: string | undefined,
    metal: Metal | undefined,
  ): EquipmentShares => {
    const ends = branchEnds(site, cords);
    const sources = panelSources(site);
    const from = sources.find((one) => one.source.id === source) ?? sources[0] ?? null;
    const all = ends.reduce((sum, { circuits }) => sum + circuits, 0);
    const weights = panelWeights(site.rules, prices, from, load, all, metal);
    if (ends.length === 0) return { from, weights, shares: null, shifted: () => null };
    const { allowance, branchLimit } = site.rules;
    const most = branchLimit - allowance.equipment - allowance.box;
    const { size, entryHeight, volts, phases, workingSpace } = USUAL_PANELBOARD;
    const make = {
      kind: 'panelboard',
      size,
      volts,
      phases,
      workingSpace,
      entryHeight,
      least: leastWorkingSpace(designOf(site.rules).tables),
    } as const;
    const room = roomFinder(site);
    const askedFor = (rest: Shares['rest']): EquipmentAsked => ({
      site,
      ends: rest,
      make,
      most,
      weigh: (circuits) => {
        const own = weights.weigh(circuits);
        return own && { ...own, itself: own.itself + more / weights.branchFoot };
      },
      source: from && [from.source.entry[0], from.source.entry[1]],
      isGood: (now, piece) => !from?.through || room(now, piece, from.source.volts!),
    });
    const shares = sharesOf(site, ends, most, from !== null, weights.weigh(1)?.trench ?? 0, (rest) =>
      proposeEquipment(askedFor(rest), isAcross),
    );
    const shifted = (by: ReadonlyMap<number, Point2>): Shares | null => {
      const found = shiftedEquipment(askedFor(shares.rest), shares.proposal.placed, by);
      return found && { ...shares, proposal: { ...shares.proposal, ...found } };
    };
    return { from, weights, shares, shifted };
  },
);
