import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { withChargers } from './chargers.ts';
import { dropsPart } from './drops-part.ts';
import { equipmentPart } from './equipment-part.ts';
import { panelsOf } from './feeding.ts';
import type { ProposalPart } from './part.ts';
import { racewaysPart } from './raceways-part.ts';
import { withWiderFeeders } from './wider-feeders.ts';

export const WHATS = ['drops', 'raceways', 'equipment', 'all'] as const;
export type What = (typeof WHATS)[number];

export interface Proposal {
  /** The site with what is proposed drawn in; everything that was there as it was. */
  readonly file: SiteFile;
  readonly parts: readonly ProposalPart[];
}

export interface ProposalWish {
  readonly what: What;
  /** Cords that hang from one new drop. */
  readonly cordsADrop: number;
  /** By which routes are weighed. */
  readonly prices: PriceList;
}

/** What is being worked on, and how far it is. */
export interface Doing {
  readonly what: ProposalPart['what'];
  readonly done: number;
  readonly of: number;
}

/**
 * What could be drawn on a site: drops with their chargers for the stalls that no charger serves, panelboards where none
 * can feed them, raceways for what has no run; or all three, in that order. Nothing that is drawn is moved or taken away.
 * Pure: the same file gives the same proposal.
 * @param tell hears what is being worked on
 * @param ready hears the proposal as far as it has come, after each part but the last
 */
export function propose(
  file: SiteFile,
  { what, cordsADrop, prices }: ProposalWish,
  tell: (doing: Doing) => void = () => {},
  ready: (soFar: Proposal) => void = () => {},
): Proposal {
  const routing = (done: number, of: number): void => tell({ what: 'raceways', done, of });
  switch (what) {
    case 'drops': {
      tell({ what: 'drops', done: 0, of: 1 });
      const { file: hung, cords, part } = dropsPart(file, cordsADrop);
      const next = withChargers(hung, cords, new Map());
      const fed = panelsOf(toSite(file)).length > 0 || cords.length === 0;
      const says = fed
        ? part.says
        : [...part.says, 'They have no chargers: there is no panel to feed them. Propose panels, then drops again.'];
      return { file: next, parts: [{ ...part, says }] };
    }
    case 'equipment': {
      tell({ what: 'equipment', done: 0, of: 1 });
      const { file: next, part } = equipmentPart(file, prices);
      return { file: next, parts: [part] };
    }
    case 'raceways': {
      const { file: next, part } = racewaysPart(file, prices, routing);
      return { file: next, parts: [part] };
    }
    case 'all': {
      tell({ what: 'drops', done: 0, of: 1 });
      const { file: hung, cords, part: drops } = dropsPart(file, cordsADrop);
      tell({ what: 'equipment', done: 0, of: 1 });
      const { file: stood, fromOf, part: equipment } = equipmentPart(hung, prices);
      const charged = withChargers(stood, cords, fromOf);
      ready({ file: charged, parts: [drops, equipment] });
      const { file: laid, part: raceways } = racewaysPart(charged, prices, routing);
      const fresh = (laid.feeders ?? []).slice(file.feeders?.length ?? 0);
      const { file: next, widened } = withWiderFeeders(laid, new Set(fresh.map(({ id }) => id)));
      const says =
        widened.length === 0
          ? []
          : [
              `${widened.join(', ')} ${widened.length === 1 ? 'has' : 'have'} more conductors in parallel than the breaker asks for, to hold the drop.`,
            ];
      return { file: next, parts: [drops, { ...equipment, says: [...equipment.says, ...says] }, raceways] };
    }
  }
}
