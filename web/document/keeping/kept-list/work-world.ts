import type { SiteDatabase } from '../store/database.ts';
import type { Tabs } from '../tabs.ts';

/** Null where it was done, else why it was not. */
export type Refusal = string | null;

/** What the list needs of the keeping of sites. */
export interface WorkWorld {
  readonly database: () => SiteDatabase | null;
  readonly openDoc: () => string | null;
  readonly tabs: Tabs;
  readonly now: () => number;
  readonly newDocument: () => string;
  /** A site is not what it was in the list; null: several are not. */
  readonly changed: (doc: string | null) => void;
}

export const NO_STORE = 'This browser keeps nothing just now.';
export const GONE = 'It is no longer there.';

/** Tells this tab and the others that a site is not what it was in the list. */
export function tellListed({ changed, tabs }: WorkWorld, doc: string): void {
  changed(doc);
  tabs.tell({ kind: 'listed', doc });
}
