import type { History } from '../../change/history.ts';
import type { OwnFile } from '../../files/own-file.ts';
import type { DocumentStore } from '../../store.ts';
import type { KeptWork } from '../kept-list/kept-work.ts';
import type { Lasting } from '../lasting.ts';
import type { PageWorld } from '../page-world.ts';
import type { SiteDatabase } from '../store/database.ts';
import type { Journal } from '../store/journal.ts';
import type { Remembered } from '../store/last-kept.ts';
import type { Claim } from '../tabs.ts';
import type { Writer } from './writer.ts';

/**
 * What this tab does with the document that it has open. `starting`: what was kept is being looked for
 * (`start-keeping.ts`); `none`: nothing is kept; `writing`: this tab keeps it (`writing.ts`); `watching`: another does
 * (`following.ts`).
 *
 *     starting -> writing, watching, none
 *     none -> writing, watching
 *     writing <-> watching
 *     any -> none, where the keeping is stopped
 */
export type Role =
  | { readonly kind: 'starting' }
  | { readonly kind: 'none' }
  | { readonly kind: 'writing'; readonly doc: string; readonly writer: Writer; claim: Claim | null }
  | { readonly kind: 'watching'; readonly doc: string; seq: number; readonly callOff: AbortController };

/** Whether a role keeps no document: not yet, or no more. */
export const keepsNone = (role: Role): role is Extract<Role, { readonly kind: 'starting' | 'none' }> =>
  role.kind === 'starting' || role.kind === 'none';

/** What the parts of the keeping of sites share: where it stands, and what each may have done. */
export interface Keeper {
  readonly store: DocumentStore;
  readonly world: PageWorld;
  readonly work: KeptWork;
  readonly lasting: Lasting;
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

/** From one role to another; resolves when the one before has been left in order. */
export async function take(keeper: Keeper, next: Role): Promise<void> {
  const before = keeper.role;
  keeper.role = next;
  // What is opened because the kept work could not be read must not come before it at the next start.
  if (!keepsNone(next) && !keeper.unread) keeper.world.tabDocument.set(next.doc);
  if (before.kind === 'watching') before.callOff.abort();
  if (before.kind !== 'writing') return;
  await before.writer.flush();
  before.writer.stop();
  before.claim?.release();
}

/** Writes down at once what waits to be written. */
export async function flush({ role }: Keeper): Promise<void> {
  if (role.kind === 'writing') await role.writer.flush();
}
