import type { Finding } from '../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import type { PriceList } from '../prices/price-list.ts';
import type { WayFigures } from './figures.ts';

/** How cords come to cars. */
export const STUDY_MOUNTS = ['overhead', 'overhead-pairs', 'pedestals', 'pedestals-pairs'] as const;
export type StudyMount = (typeof STUDY_MOUNTS)[number];

export const MOUNT_WORDS: Readonly<Record<StudyMount, string>> = {
  overhead: 'Overhead, one cord a drop',
  'overhead-pairs': 'Overhead, two cords a drop',
  pedestals: 'Pedestals, one cord each',
  'pedestals-pairs': 'Pedestals, two cords each',
};

/**
 * Whether a study may go on, asked as it goes; with a share, whether less than that share of its time is gone. What is
 * done by then is given.
 */
export type MayGoOn = (share?: number) => boolean;

/** What a study is made with. */
export interface StudyWish {
  readonly prices: PriceList;
  /** Hours that a car stays, all there at once, where the site has no day of charging. */
  readonly stayHours: number;
  /** Id of the charging day that decides, of several; null takes the hardest. */
  readonly day: string | null;
}

/** A failing finding that the lot itself forces, and what does. */
export interface Forced {
  readonly finding: Finding;
  readonly by: string;
}

/** One way to do the job, drawn, planned, priced and checked. */
export interface StudyWay {
  /** `W01`, `W02`, in the order in which they were drawn. */
  readonly id: string;
  readonly name: string;
  /** Names of other ways that came to the very same, and are not drawn twice. */
  readonly also: readonly string[];
  readonly mount: string;
  readonly supply: string;
  /** Rating of a charger, A. */
  readonly amps: number;
  /** The site in which it is drawn whole. */
  readonly file: SiteFile;
  /** What it asks for beyond what is drawn, and what was done to it. */
  readonly says: readonly string[];
  readonly forced: readonly Forced[];
  readonly figures: WayFigures;
}

/** A way that cannot be, and why. */
export interface ImpossibleWay {
  readonly name: string;
  readonly says: string;
}

export interface Study {
  readonly lot: string;
  readonly stalls: number;
  readonly ways: readonly StudyWay[];
  /** Ids of the ways that nothing beats on all counts. */
  readonly unbeaten: ReadonlySet<string>;
  readonly cannot: readonly ImpossibleWay[];
  /** Combinations of mount, supply and charger that were looked at; more than were drawn. */
  readonly looked: number;
  /** Those left out before they were drawn, and why. */
  readonly leftOut: readonly string[];
  /** What every way of it assumes. */
  readonly assumes: readonly string[];
}
