import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import type { PriceList } from '../prices/price-list.ts';
import type { LoadWish } from './panels/charger-amps.ts';
import type { ProposalPart } from './part.ts';

export const WHATS = ['drops', 'raceways', 'equipment', 'all'] as const;
export type What = (typeof WHATS)[number];

export interface Proposal {
  /** The site with what is proposed drawn in; everything that was there as it was. */
  readonly file: SiteFile;
  readonly parts: readonly ProposalPart[];
  /** Of one that is whole: how many of its findings fail, and what its bid comes to, by the prices asked for; not told of single parts. */
  readonly fails?: number;
  readonly dollars?: number;
}

export interface ProposalWish {
  readonly what: What;
  /** Cords that hang from one new drop. */
  readonly cordsADrop: number;
  /** By which routes are weighed. */
  readonly prices: PriceList;
  /** How chargers on new panels are run; at full rate where it is not said. */
  readonly load?: LoadWish;
  /** Of new feeders; that of the rules where it is not said. */
  readonly feederMetal?: Metal;
  /** Stalls that drops are proposed for; all that no charger serves where it is not given. */
  readonly wanted?: ReadonlySet<string>;
  /** False where nobody asks how near the best the routes are, which takes as long as to find them. */
  readonly isBounded?: boolean;
  /** Answers for the branches of each piece of equipment that are planned and priced; by the size of the lot unless said. */
  readonly answers?: number;
}

/** What is being worked on, and how far it is. */
export interface Doing {
  readonly what: ProposalPart['what'];
  readonly done: number;
  readonly of: number;
}
