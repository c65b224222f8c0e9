import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, expect, test, vi } from 'vitest';
import { openSites, readStored } from '../../../../web/document/keeping/store/database.ts';
import { DATABASE_NAME, DATABASE_VERSION } from '../../../../web/document/keeping/store/storage-records.ts';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

/** The store as version 1 of it was made, written out here so that it stays what it was. */
const firstVersion = () =>
  openDB(DATABASE_NAME, 1, {
    upgrade: (database) => {
      database.createObjectStore('documents', { keyPath: 'doc' });
      database.createObjectStore('snapshots', { keyPath: ['doc', 'seq'] });
      database.createObjectStore('log', { keyPath: ['doc', 'seq'] });
    },
  });

const KEPT = {
  documents: [
    { doc: 'a', name: 'Lot' },
    { doc: 'b', name: 'Other lot' },
  ],
  snapshots: [{ doc: 'a', seq: 0, file: { name: 'Lot', underlay: { file: 'plan.pdf' } } }],
  log: [
    { doc: 'a', seq: 1, edit: { name: 'one', steps: [] } },
    { doc: 'a', seq: 2, edit: { name: 'two', steps: [] } },
  ],
} as const;

test('a store of version 1 keeps every record when it is opened by this page', async () => {
  const old = await firstVersion();
  for (const [name, records] of Object.entries(KEPT)) for (const record of records) await old.put(name, record);
  old.close();
  const now = await openSites(() => {});
  expect(now.version).toBe(DATABASE_VERSION);
  for (const [name, records] of Object.entries(KEPT)) expect(await now.getAll(name as 'log')).toEqual(records);
  const { snapshots, log } = await readStored(now, 'a');
  expect([snapshots.length, log.length]).toEqual([1, 2]);
  now.close();
});

test('a page that holds version 1 open steps aside, and cannot open the store again', async () => {
  const blocking = vi.fn();
  const old = await openDB(DATABASE_NAME, 1, {
    upgrade: (database) => void database.createObjectStore('documents', { keyPath: 'doc' }),
    blocking: (_, __, event) => {
      blocking();
      (event.target as IDBDatabase).close();
    },
  });
  const now = await openSites(() => {});
  expect(blocking).toHaveBeenCalledOnce();
  await expect(firstVersion()).rejects.toMatchObject({ name: 'VersionError' });
  old.close();
  now.close();
});
