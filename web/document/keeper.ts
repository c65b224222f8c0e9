import type { SiteDatabase } from './database.ts';
import type { History } from './history.ts';
import type { Journal } from './journal.ts';
import type { KeptWork } from './kept-work.ts';
import type { Remembered } from './last-kept.ts';
import type { OwnFile } from './own-file.ts';
import type { PageWorld } from './page-world.ts';
import type { DocumentStore } from './store.ts';
import type { Claim } from './tabs.ts';
import type { Writer } from './writer.ts';

/** What this tab does with the document that it has open. */
export type Role =
  | { readonly kind: 'none' }
  | { readonly kind: 'writing'; readonly doc: string; readonly writer: Writer; claim: Claim | null }
  | { readonly kind: 'watching'; readonly doc: string; seq: number; readonly callOff: AbortController };

/** What the parts of the keeping of sites share: where it stands, and what each may have done. */
export interface Keeper {
  readonly store: DocumentStore;
  readonly world: PageWorld;
  readonly work: KeptWork;
  /** Null where the store is not open: not yet, no more, or never. */
  database: SiteDatabase | null;
  role: Role;
  /** The own file of a document that was opened before what was kept had been looked for. */
  early: OwnFile | null;
  /** The own file of the document that is open. */
  ownFile: OwnFile;
  /** The order of the site that was taken up last, in any tab. */
  highest: number;
  /** What was kept could not be read: which it was is remembered, whatever is opened meanwhile. */
  unread: Remembered | null;
  stopped: boolean;
  /** Takes another role; resolves when the one before has been left in order. */
  readonly take: (next: Role) => Promise<void>;
  readonly writing: (open: SiteDatabase, journal: Journal, history: History, claim: Claim | null) => Role;
  /** Keeps a document under a name of its own, with `least` edits to its count. */
  readonly begin: (history: History, from: OwnFile, least?: number) => Promise<void>;
  /** Another tab took the right to write a document. */
  readonly lost: (doc: string) => void;
  /** Says that everything is kept. */
  readonly sayKept: () => void;
  /** Work that nobody waits for; where the store fails it, that is said. */
  readonly see: (work: Promise<unknown>) => void;
  /** A site is not what it was in the list; null: several are not. */
  readonly changed: (doc: string | null) => void;
}
