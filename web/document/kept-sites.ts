import * as v from 'valibot';
import { forget, readStored, type SiteDatabase } from './database.ts';
import type { DocumentRecord } from './storage-records.ts';
import type { Tabs } from './tabs.ts';

/** So many sites are kept; an older one goes, unless another tab has it open. */
export const MAX_KEPT = 12;

const recordSchema = v.object({
  doc: v.string(),
  name: v.string(),
  seq: v.number(),
  edits: v.number(),
  at: v.number(),
  fileName: v.exactOptional(v.string()),
  place: v.exactOptional(v.custom<NonNullable<DocumentRecord['place']>>((value) => typeof value === 'object')),
  savedSeq: v.exactOptional(v.number()),
});

/** The record of a document; undefined where there is none that could be read. */
export async function recordOf(database: SiteDatabase, doc: string): Promise<DocumentRecord | undefined> {
  const parsed = v.safeParse(recordSchema, await database.get('documents', doc));
  return parsed.success ? parsed.output : undefined;
}

/** The records of all documents, the newest first. */
export async function recordsOf(database: SiteDatabase): Promise<readonly DocumentRecord[]> {
  const all = (await database.getAll('documents')) as readonly unknown[];
  return all.filter((record) => v.is(recordSchema, record)).sort((a, b) => b.at - a.at);
}

/** The texts kept of a document as they stand, the newest first. */
export async function textsOf(database: SiteDatabase, doc: string): Promise<readonly string[]> {
  const { snapshots } = await readStored(database, doc);
  return snapshots
    .flatMap((snapshot) => {
      const { text } = snapshot as { readonly text?: unknown };
      return typeof text === 'string' ? [text] : [];
    })
    .reverse();
}

/** Counts a document among those that were changed, so that it is not forgotten: an alternative was branched from it. */
export async function holdOn(database: SiteDatabase, doc: string): Promise<void> {
  const record = await recordOf(database, doc);
  if (record) await database.put('documents', { ...record, edits: Math.max(1, record.edits) });
}

/** Forgets the oldest documents, and those that nobody ever changed, save one and where a tab has them open. */
export async function clearOld(database: SiteDatabase, tabs: Tabs, save: string): Promise<void> {
  const others = (await recordsOf(database)).filter(({ doc }) => doc !== save);
  const changed = others.filter(({ edits }) => edits > 0);
  for (const { doc } of [...others.filter(({ edits }) => edits === 0), ...changed.slice(MAX_KEPT - 1)]) {
    const claim = await tabs.claim(doc, 'if-free', () => {});
    if (!claim) continue;
    await forget(database, [doc]);
    claim.release();
  }
}
