import * as v from 'valibot';
import type { Tabs } from '../tabs.ts';
import { forget, readStored, type SiteDatabase } from './database.ts';
import { type Recovered, recovered } from './recovery.ts';
import type { DocumentRecord } from './storage-records.ts';

const recordSchema = v.object({
  doc: v.string(),
  name: v.string(),
  seq: v.number(),
  edits: v.number(),
  at: v.number(),
  order: v.exactOptional(v.number()),
  binned: v.exactOptional(v.number()),
  fileName: v.exactOptional(v.string()),
  place: v.exactOptional(v.custom<NonNullable<DocumentRecord['place']>>((value) => typeof value === 'object')),
  stamp: v.exactOptional(v.object({ size: v.number(), lastModified: v.number(), sum: v.number() })),
  sent: v.exactOptional(v.boolean()),
  savedSeq: v.exactOptional(v.number()),
  savedAt: v.exactOptional(v.number()),
});

/** The record of a document; undefined where nothing of it is there. One that was damaged is made up from the rest. */
export async function recordOf(database: SiteDatabase, doc: string): Promise<DocumentRecord | undefined> {
  const raw: unknown = await database.get('documents', doc);
  const parsed = v.safeParse(recordSchema, raw);
  return parsed.success ? parsed.output : madeUp(database, doc, raw);
}

/** The records of all documents, the newest first, those in the bin among them. */
export async function documentRecords(database: SiteDatabase): Promise<readonly DocumentRecord[]> {
  const transaction = database.transaction(['documents', 'snapshots']);
  const [raw, keys] = await Promise.all([
    transaction.objectStore('documents').getAll() as Promise<readonly unknown[]>,
    transaction.objectStore('snapshots').getAllKeys(),
  ]);
  const sound = raw.filter((record) => v.is(recordSchema, record));
  const known = new Set(sound.map(({ doc }) => doc));
  const others = new Set(keys.map(([doc]) => doc).filter((doc) => typeof doc === 'string' && !known.has(doc)));
  const rest = await Promise.all([...others].map((doc) => recordOf(database, doc)));
  return [...sound, ...rest.filter((record) => record !== undefined)].sort(newestFirst);
}

/** By the order in which they were taken up; the clock tells only those apart that have none, or the same. */
const newestFirst = (a: DocumentRecord, b: DocumentRecord): number =>
  (b.order ?? 0) - (a.order ?? 0) || b.at - a.at || (a.doc < b.doc ? -1 : 1);

/** The highest order of any. */
export const highestOrder = (records: readonly DocumentRecord[]): number =>
  records.reduce((most, { order }) => Math.max(most, order ?? 0), 0);

/** The record of a document by its snapshots and log, where its own is damaged or gone. */
async function madeUp(database: SiteDatabase, doc: string, raw: unknown): Promise<DocumentRecord | undefined> {
  const stored = await readStored(database, doc);
  if (stored.snapshots.length === 0) return undefined;
  const found = recovered(stored, 0);
  const { name, at } = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const when = typeof at === 'number' && Number.isFinite(at) ? at : 0;
  if (found.kind === 'broken') {
    return { doc, name: typeof name === 'string' ? name : 'A site without a name', seq: 0, edits: 1, at: when };
  }
  const seq = found.seq + found.lost;
  return { doc, name: found.history.file.name, seq, edits: Math.max(1, seq), at: when };
}

/** A document as the store has it now: its newest snapshot with every change kept after it. */
export async function presentOf(
  database: SiteDatabase,
  doc: string,
): Promise<{ readonly record: DocumentRecord; readonly found: Recovered } | undefined> {
  const record = await recordOf(database, doc);
  return record && { record, found: recovered(await readStored(database, doc), record.seq) };
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

/** Forgets the documents that were opened and never changed, save one and where a tab has them open. */
export async function clearUnchanged(database: SiteDatabase, tabs: Tabs, save: string): Promise<void> {
  const unchanged = (await documentRecords(database)).filter(({ doc, edits }) => doc !== save && edits === 0);
  for (const { doc } of unchanged) {
    const claim = await tabs.claim(doc, 'if-free', () => {});
    if (!claim) continue;
    await forget(database, [doc]);
    claim.release();
  }
}
