import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Point2, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { designOf } from '../../branches/design.ts';
import type { PriceList } from '../../prices/price-list.ts';
import type { CordToCome } from '../drops/drops-part.ts';
import { panelsOf } from '../feeding.ts';
import { equipmentId, equipmentInFile } from '../new-equipment.ts';
import type { ProposalPart } from '../part.ts';
import { FULL_RATE, type LoadWish } from './charger-amps.ts';
import { type EquipmentShares, equipmentShares } from './equipment-shares.ts';
import { feedPanels, type NewPanel } from './feed-panels.ts';
import { loadWords } from './load-words.ts';
import type { PanelWeights } from './panel-weights.ts';
import type { Shares } from './standing-share.ts';
import { standingPanelWords } from './standing-words.ts';

export interface EquipmentPart {
  readonly file: SiteFile;
  /** Which equipment, new or standing, is for which drop. */
  readonly fromOf: ReadonlyMap<string, string>;
  readonly part: ProposalPart;
  /** Ids of the new panels. */
  readonly panels: readonly string[];
  /** The same with some of these moved by whole feet, along the lot and square to it; null where one cannot stand so. */
  readonly shifted: (by: ReadonlyMap<string, Point2>) => EquipmentPart | null;
}

export interface EquipmentWish {
  readonly prices: PriceList;
  /** Cords that are to come; null where it is not known yet. */
  readonly cords: readonly CordToCome[] | null;
  readonly load?: LoadWish;
  readonly shape?: Shape;
}

/** A way to look at what panels cost, of which plans and prices find the cheapest. */
export interface Shape {
  /** Dollars that each panel is weighed at beside its price: more makes for fewer panels. */
  readonly more: number;
  /** Several panels may hang on one transformer. */
  readonly isShared: boolean;
  /** A panel may be for canopies on both sides of an open aisle, through a trench. */
  readonly isAcross?: boolean;
  /** Of several that can feed new panels, by its id; the first unless said. */
  readonly source?: string;
  /** Of new feeders; that of the rules unless said. */
  readonly metal?: Metal;
}

export const PRICED_SHAPE: Shape = { more: 0, isShared: true };

/**
 * Panels for the branches that are to come: those that stand as far as they have room and are near enough to be worth it,
 * and beside them new ones, their number, sizes, places and what each is for decided together by what it all costs. What
 * is drawn stays as it is.
 */
export function equipmentPart(file: SiteFile, wish: EquipmentWish): EquipmentPart {
  const { prices, cords, load = FULL_RATE, shape = PRICED_SHAPE } = wish;
  const site = toSite(file);
  const { more, isAcross = false, source, metal } = shape;
  const found = equipmentShares(site, prices, cords, load, more, isAcross, source, metal);
  return found.shares === null
    ? panelsOf(site).length > 0
      ? only(file, standingPanelWords(site, prices))
      : only(file, ['There is nothing for equipment to feed: neither drops nor stalls are drawn.'])
    : partFrom(file, site, wish, found, found.shares);
}

function partFrom(
  file: SiteFile,
  site: Site,
  wish: EquipmentWish,
  found: EquipmentShares,
  shares: Shares,
): EquipmentPart {
  const { prices, cords, load = FULL_RATE, shape = PRICED_SHAPE } = wish;
  const { from, weights } = found;
  const { proposal, rest } = shares;
  const dollars = proposal.total * weights.branchFoot;
  const fullRateDollars = (): number =>
    equipmentPart(file, { prices, cords, load: FULL_RATE, shape }).part.measure?.value ?? dollars;
  let next = file;
  const fromOf = new Map(shares.given);
  const panels: (NewPanel & { readonly says: string })[] = [];
  for (const { equipment, ends: own, circuits, total, longest, feeder, dug } of proposal.placed) {
    const id = equipmentId(next, 'P');
    const sized = weights.size(circuits)!;
    next = {
      ...next,
      equipment: [...(next.equipment ?? []), equipmentInFile(id, { ...equipment, ...sized }, file.units)],
    };
    for (const i of own) fromOf.set(rest[i]!.id, id);
    panels.push({
      id,
      mainAmps: sized.mainAmps,
      chargers: circuits,
      says: `${id}, ${sized.mainAmps} A with ${sized.spaces} spaces, for ${forWhat(site, own.length, circuits)}: branches of ${feet(total, site)} in all along the lot, the longest ${feet(longest, site)}${from ? `; ${feet(feeder, site)} from ${from.source.id}` : ''}${dug > 0.05 ? `; ${feet(dug, site)} of them in the ground, where no steel leads on` : ''}.${sized.managedAmps === undefined ? '' : ` Load management holds its chargers to ${sized.managedAmps} A.`}`,
    });
  }
  // All panels stand before the first transformer takes a place.
  const fed = feedPanels(next, panels, from, weights, shape.isShared);
  return {
    file: fed.file,
    fromOf,
    panels: panels.map(({ id }) => id),
    shifted: (by) => {
      const moved = found.shifted(
        new Map([...by].map(([id, feet]) => [panels.findIndex((one) => one.id === id), feet] as const)),
      );
      return moved && partFrom(file, site, wish, found, moved);
    },
    part: {
      what: 'equipment',
      says: [
        ...standingSaid(shares, site),
        ...panels.map(({ says }) => says),
        ...fed.says,
        ...loadWords(
          load,
          {
            panels: panels.map(({ chargers }) => ({ chargers, size: weights.size(chargers)! })),
            saved: load.kind === 'full' ? 0 : fullRateDollars() - dollars,
          },
          designOf(site.rules).tables,
        ),
        ...weighedWords(proposal.stretches, proposal.looked, site, weights, prices),
      ],
      measure:
        panels.length === 0
          ? null
          : {
              of: 'panels, feeders and branches to them along the lot, over all cuts of the rows',
              value: dollars,
              // Panels that were moved by what their plans come to may weigh more.
              bound: Math.min(dollars, found.shares!.proposal.total * weights.branchFoot),
              unit: 'dollars',
            },
      without: proposal.without.map((i) => ({
        id: rest[i]!.id,
        says: `Of the places that were looked at for panels none that is free is within the branch limit of ${rest[i]!.id}${from?.through ? ', with room for a transformer of a standard size beside it' : ''}.`,
      })),
    },
  };
}

const feet = (length: number, site: Site): string => printLength(length, site.units, { inchParts: 1, decimals: 2 });

function forWhat(site: Site, ends: number, circuits: number): string {
  if (site.drops.length === 0) return counted(ends, 'stall');
  return `${counted(ends, 'drop')}${circuits > ends ? ` with ${counted(circuits, 'charger')}` : ''}`;
}

const only = (file: SiteFile, says: readonly string[]): EquipmentPart => ({
  file,
  fromOf: new Map(),
  panels: [],
  shifted: () => null,
  part: { what: 'equipment', says, measure: null, without: [] },
});

function standingSaid({ standing, given, rest }: Shares, site: Site): readonly string[] {
  const used = new Map<string, number>();
  for (const panel of given.values()) used.set(panel, (used.get(panel) ?? 0) + 1);
  const noun = site.drops.length === 0 ? 'stall' : 'drop';
  return standing.map(({ panel, room, why }: { panel: Equipment; room: number; why: string }) => {
    const n = used.get(panel.id) ?? 0;
    if (n > 0) return `${panel.id} stands and feeds ${counted(n, noun)} more.`;
    if (room === 0) return `${panel.id} stands and is full: ${why}.`;
    return rest.length > 0
      ? `${panel.id} stands and has room: what it could feed was weighed, and comes to less from others or is beyond the branch limit.`
      : `${panel.id} stays as it is.`;
  });
}

const weighedWords = (
  stretches: number,
  looked: number,
  site: Site,
  { branchFoot }: PanelWeights,
  prices: PriceList,
): readonly string[] =>
  stretches === 0
    ? []
    : [
        `${counted(stretches, 'stretch', 'stretches')} of the rows were weighed, each with its panel by size, feeder and trench by ${prices.name}, a foot of branch at $${branchFoot.toFixed(2)}; ${looked} places were looked at${site.members.length > 0 ? ', by the steel or with a trench to it,' : ''} and clear of stalls, aisles, columns, keep-outs and working spaces.`,
      ];
