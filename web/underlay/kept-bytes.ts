import { type DBSchema, openDB } from 'idb';

/** A file as it was picked. */
interface KeptFile {
  readonly hash: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** When it was last asked for, by this machine's clock: the longest unused goes first. */
  readonly used: number;
}

interface KeptFiles extends DBSchema {
  files: { key: string; value: KeptFile; indexes: { used: number } };
}

/** How many files are kept, and how many bytes of them. */
const MOST_FILES = 40;
const MOST_BYTES = 500_000_000;

const openFiles = () =>
  openDB<KeptFiles>('overrow.underlays', 1, {
    upgrade: (database) => database.createObjectStore('files', { keyPath: 'hash' }).createIndex('used', 'used'),
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
    await database.put('files', { hash, bytes, used: now });
    const files = await database.getAllFromIndex('files', 'used');
    let size = 0;
    for (const [age, file] of files.reverse().entries()) {
      size += file.bytes.byteLength;
      if (file.hash !== hash && (age >= MOST_FILES || size > MOST_BYTES)) await database.delete('files', file.hash);
    }
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
    await database.put('files', { ...found, used: now });
    return found.bytes;
  } finally {
    database.close();
  }
}
