import type { Claim, Tabs } from '../tabs.ts';
import { readStored, type SiteDatabase } from './database.ts';
import { documentRecords, highestOrder, recordOf } from './kept-sites.ts';
import { lossOf, type Mirror } from './mirror.ts';
import type { Stored } from './recovery.ts';
import type { DocumentRecord } from './storage-records.ts';

/** All that the store has of a document, with the right to write it where that was to be had. */
export interface KeptDocument {
  readonly document: DocumentRecord;
  readonly stored: Stored;
  readonly claim: Claim | null;
}

/** Reads a document; undefined where the store has none of it. What is read after `late` lets go of its claim. */
export async function readKept(
  database: SiteDatabase,
  doc: string,
  tabs: Tabs,
  onLost: () => void,
  late: AbortSignal,
): Promise<KeptDocument | undefined> {
  const document = await recordOf(database, doc);
  if (!document || late.aborted) return undefined;
  const claim = await tabs.claim(doc, 'if-free', onLost);
  const letGo = (): void => claim?.release();
  if (late.aborted) letGo();
  else late.addEventListener('abort', letGo);
  try {
    const stored = await readStored(database, doc);
    return { document, stored, claim };
  } catch (error) {
    letGo();
    throw error;
  } finally {
    late.removeEventListener('abort', letGo);
  }
}

/** By what a page knows which site it had open: the tab's own, else the last that was changed in this browser. */
export interface Remembered {
  readonly tab: string | null;
  readonly mirror: Mirror | null;
}

/** The document to bring back when the page opens, and what to tell a person of one that is gone. */
export async function lastKept(
  database: SiteDatabase,
  { tab, mirror }: Remembered,
): Promise<{ readonly doc: string | undefined; readonly loss: string | null; readonly order: number }> {
  const all = await documentRecords(database);
  const standing = all.filter(({ binned }) => binned === undefined);
  const doc = [tab, mirror?.doc, standing[0]?.doc].find((id) => standing.some((other) => other.doc === id));
  const loss = mirror && !all.some((other) => other.doc === mirror.doc) ? lossOf(mirror) : null;
  return { doc: doc ?? undefined, loss, order: highestOrder(all) };
}
