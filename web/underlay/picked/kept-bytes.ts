import { type DBSchema, openDB } from 'idb';

/** A file as it was picked. */
interface KeptFile {
  readonly hash: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** How large a kept file is and when it was last asked for, apart from it: what is let go is known without reading any. */
interface KeptUse {
  readonly hash: string;
  readonly size: number;
  /** By this machine's clock: the longest unused goes first. */
  readonly used: number;
}

interface KeptFiles extends DBSchema {
  files: { key: string; value: KeptFile };
  uses: { key: string; value: KeptUse };
}

/** How many files are kept, and how many bytes of them. */
const MOST_FILES = 40;
const MOST_BYTES = 500_000_000;

const openFiles = () =>
  openDB<KeptFiles>('overrow.underlays', 2, {
    upgrade: async (database, from, _, transaction) => {
      if (from < 1) database.createObjectStore('files', { keyPath: 'hash' });
      const uses = database.createObjectStore('uses', { keyPath: 'hash' });
      // Before, a file had its last use with it.
      for (let cursor = await transaction.objectStore('files').openCursor(); cursor; cursor = await cursor.continue()) {
        const { hash, bytes, used = 0 } = cursor.value as KeptFile & Partial<KeptUse>;
        await uses.put({ hash, size: bytes.byteLength, used });
      }
    },
  });

/** SHA-256 of a file, in hexadecimal digits. */
export async function hashOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Keeps a file in the browser by what is in it, and lets those go that were not used for longest. */
export async function keepBytes(hash: string, bytes: Uint8Array<ArrayBuffer>, now: number): Promise<void> {
  const database = await openFiles();
  try {
    const change = database.transaction(['files', 'uses'], 'readwrite');
    const [files, uses] = [change.objectStore('files'), change.objectStore('uses')];
    const done: Promise<unknown>[] = [
      files.put({ hash, bytes }),
      uses.put({ hash, size: bytes.byteLength, used: now }),
    ];
    let size = 0;
    for (const [age, file] of (await uses.getAll()).sort((a, b) => b.used - a.used).entries()) {
      size += file.size;
      if (file.hash === hash || (age < MOST_FILES && size <= MOST_BYTES)) continue;
      done.push(files.delete(file.hash), uses.delete(file.hash));
    }
    await Promise.all([...done, change.done]);
  } finally {
    database.close();
  }
}

/** A file that the browser keeps; null where it does not, or where it is no longer what it was. */
export async function keptBytes(hash: string, now: number): Promise<Uint8Array<ArrayBuffer> | null> {
  const database = await openFiles();
  try {
    const found = await database.get('files', hash);
    if (!found || (await hashOf(found.bytes)) !== hash) return null;
    await database.put('uses', { hash, size: found.bytes.byteLength, used: now });
    return found.bytes;
  } finally {
    database.close();
  }
}
