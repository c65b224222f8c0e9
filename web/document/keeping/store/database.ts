import { type IDBPDatabase, openDB } from 'idb';
import type { Stored } from './recovery.ts';
import {
  DATABASE_NAME,
  DATABASE_VERSION,
  type DocumentRecord,
  type LogRecord,
  type SnapshotRecord,
  type StoredSites,
} from './storage-records.ts';

export type SiteDatabase = IDBPDatabase<StoredSites>;

/**
 * Opens the browser's store of sites. `onClosed` is called when it can no longer be written through this connection:
 * a newer page wants to change it, or the browser took it away. Rejects where the browser has no store, or one of a
 * newer page's making (VersionError).
 */
export async function openSites(onClosed: (why: 'newer' | 'lost') => void): Promise<SiteDatabase> {
  if (typeof indexedDB === 'undefined' || indexedDB === null) {
    throw new Error('it has no store for pages, or does not let this page use it');
  }
  return openDB<StoredSites>(DATABASE_NAME, DATABASE_VERSION, {
    // What an older page stored stays as it is; a store that is missing, for whatever reason, is made.
    upgrade: (database) => {
      const has = (name: 'documents' | 'snapshots' | 'log' | 'cards') => database.objectStoreNames.contains(name);
      if (!has('documents')) database.createObjectStore('documents', { keyPath: 'doc' });
      if (!has('snapshots')) database.createObjectStore('snapshots', { keyPath: ['doc', 'seq'] });
      if (!has('log')) database.createObjectStore('log', { keyPath: ['doc', 'seq'] });
      if (!has('cards')) database.createObjectStore('cards', { keyPath: 'doc' });
    },
    blocking: (_, __, event) => {
      (event.target as IDBDatabase).close();
      onClosed('newer');
    },
    terminated: () => onClosed('lost'),
  });
}

// A key that is an array comes after every number, so this covers a document's records whatever their number.
const allOf = (doc: string): IDBKeyRange => IDBKeyRange.bound([doc], [doc, []]);
const upTo = (doc: string, seq: number): IDBKeyRange => IDBKeyRange.bound([doc], [doc, seq]);
const past = (doc: string, seq: number): IDBKeyRange => IDBKeyRange.bound([doc, seq], [doc, []], true);

/** What the store holds of a document. */
export async function readStored(database: SiteDatabase, doc: string): Promise<Stored> {
  const transaction = database.transaction(['snapshots', 'log']);
  const [snapshots, log] = await Promise.all([
    transaction.objectStore('snapshots').getAll(allOf(doc)),
    transaction.objectStore('log').getAll(allOf(doc)),
  ]);
  return { snapshots, log };
}

/** The log of a document after an entry. */
export const readLogAfter = (database: SiteDatabase, doc: string, seq: number): Promise<readonly LogRecord[]> =>
  database.getAll('log', past(doc, seq));

/** What one write puts down, in one transaction: all of it or nothing. */
export interface Writing {
  readonly document: DocumentRecord;
  readonly log: readonly LogRecord[];
  readonly snapshot?: SnapshotRecord;
  /** With a snapshot: the older one that is kept beside it. What came before that goes. */
  readonly keepFrom?: number;
}

/**
 * Writes to the store. All requests are made before the function first waits, so that a write begun while the page is
 * being closed is complete. Rejects with a ConstraintError, having changed nothing, where another tab has written the
 * same entries.
 */
export async function write(database: SiteDatabase, writing: Writing): Promise<void> {
  const { document, log, snapshot, keepFrom } = writing;
  const transaction = database.transaction(['documents', 'snapshots', 'log'], 'readwrite', {
    durability: snapshot ? 'strict' : 'relaxed',
  });
  const { done } = transaction;
  const requests: Promise<unknown>[] = [];
  const ask = (request: Promise<unknown>): void => {
    // When the transaction fails, each of its requests does; none of them is left unheard.
    request.catch(() => {});
    requests.push(request);
  };
  try {
    for (const entry of log) ask(transaction.objectStore('log').add(entry));
    ask(transaction.objectStore('documents').put(document));
    if (snapshot) ask(transaction.objectStore('snapshots').put(snapshot));
    if (keepFrom !== undefined) {
      const { doc } = document;
      ask(transaction.objectStore('log').delete(upTo(doc, keepFrom)));
      ask(transaction.objectStore('snapshots').delete(IDBKeyRange.bound([doc], [doc, keepFrom], false, true)));
    }
    // Without this the browser would wait to hear that no more is coming, from a page that may be gone by then.
    transaction.commit();
    await Promise.all(requests);
    await done;
  } catch (error) {
    // A request that was refused outright has not ended the transaction, and half of it must not be kept.
    if (transaction.error === null) abort(transaction);
    await done.catch(() => {});
    throw transaction.error ?? error;
  }
}

function abort(transaction: { readonly abort: () => void }): void {
  try {
    transaction.abort();
  } catch {
    // It has ended of itself.
  }
}

/** Forgets documents altogether. */
export async function forget(database: SiteDatabase, docs: readonly string[]): Promise<void> {
  const transaction = database.transaction(['documents', 'snapshots', 'log', 'cards'], 'readwrite');
  await Promise.all([
    ...docs.flatMap((doc) => [
      transaction.objectStore('documents').delete(doc),
      transaction.objectStore('snapshots').delete(allOf(doc)),
      transaction.objectStore('log').delete(allOf(doc)),
      transaction.objectStore('cards').delete(doc),
    ]),
    transaction.done,
  ]);
}
