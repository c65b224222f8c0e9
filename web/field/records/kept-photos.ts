import { type DBSchema, openDB } from 'idb';
import { type Photos, photoHashes } from '../../../calc/field/records-bundle.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { hashOf } from '../../underlay/picked/kept-bytes.ts';

interface KeptPhoto {
  readonly hash: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

interface PhotoStore extends DBSchema {
  photos: { key: string; value: KeptPhoto };
}

/** How many photos are kept on a device, and how many bytes of them: past that none is taken, and none goes unasked. */
const MOST_PHOTOS = 4000;
const MOST_BYTES = 800_000_000;
/** The longer side of a photo as it is kept, pixels, and how far it is packed. */
const LONGEST = 1280;
const QUALITY = 0.72;
/** No picture of a camera is larger. */
const LARGEST_FILE = 60_000_000;

const openPhotos = () =>
  openDB<PhotoStore>('overrow.photos', 1, {
    upgrade: (database) => database.createObjectStore('photos', { keyPath: 'hash' }),
  });

/** How many photos this device keeps, and their bytes. */
export async function photosKept(): Promise<{ readonly count: number; readonly bytes: number }> {
  const database = await openPhotos();
  try {
    let [count, bytes] = [0, 0];
    for (let at = await database.transaction('photos').store.openCursor(); at; at = await at.continue()) {
      count += 1;
      bytes += at.value.bytes.byteLength;
    }
    return { count, bytes };
  } finally {
    database.close();
  }
}

/** A photo that this device keeps; null where it does not. */
export async function keptPhoto(hash: string): Promise<Blob | null> {
  const database = await openPhotos();
  try {
    const found = await database.get('photos', hash);
    return found ? new Blob([found.bytes], { type: 'image/jpeg' }) : null;
  } finally {
    database.close();
  }
}

/** The photos of these hashes that this device keeps, for a file that they travel in. */
export async function photosHere(hashes: readonly string[]): Promise<ReadonlyMap<string, Uint8Array<ArrayBuffer>>> {
  const found = new Map<string, Uint8Array<ArrayBuffer>>();
  if (hashes.length === 0) return found;
  const database = await openPhotos();
  try {
    for (const hash of hashes) {
      const photo = await database.get('photos', hash);
      if (photo) found.set(hash, photo.bytes);
    }
  } finally {
    database.close();
  }
  return found;
}

/** The photos that stand in a list of marks, as far as this device keeps them. */
export const photosForHandover = (records: readonly Mark[]): ReturnType<typeof photosHere> =>
  photosHere(photoHashes(records));

/** Keeps photos that came with records of others; those that are kept already are passed over. Rejects with words where there is no room. */
export async function keepPhotosOf(photos: Photos): Promise<void> {
  const { count, bytes: used } = await photosKept();
  const database = await openPhotos();
  try {
    const fresh: KeptPhoto[] = [];
    for (const [hash, bytes] of photos)
      if ((await database.getKey('photos', hash)) === undefined) fresh.push({ hash, bytes: new Uint8Array(bytes) });
    const more = fresh.reduce((sum, { bytes }) => sum + bytes.byteLength, 0);
    if (count + fresh.length > MOST_PHOTOS || used + more > MOST_BYTES)
      throw new Error(`this device keeps ${count} photos already, and ${fresh.length} more are too many`);
    for (const photo of fresh) await database.put('photos', photo);
  } finally {
    database.close();
  }
}

/** Whether each photo is the one that its name says: by SHA-256. */
export async function photosMatchHashes(photos: Photos): Promise<boolean> {
  for (const [hash, bytes] of photos) if ((await hashOf(new Uint8Array(bytes))) !== hash) return false;
  return true;
}

/** Shrinks a photo and keeps it; gives what its mark says of it. Rejects with words for the person who took it. */
export async function keepPhoto(file: Blob): Promise<NonNullable<Mark['photo']>> {
  if (file.size > LARGEST_FILE) throw new Error('the picture is larger than a camera makes them');
  const { blob, width, height } = await shrunk(file);
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const hash = await hashOf(bytes);
  const { count, bytes: used } = await photosKept();
  if (count >= MOST_PHOTOS || used + bytes.byteLength > MOST_BYTES)
    throw new Error(`this device keeps ${count} photos already, which is all that it may`);
  const database = await openPhotos();
  try {
    await database.put('photos', { hash, bytes });
  } finally {
    database.close();
  }
  return { hash, bytes: bytes.byteLength, width, height };
}

async function shrunk(file: Blob): Promise<{ readonly blob: Blob; readonly width: number; readonly height: number }> {
  const picture = await createImageBitmap(file).catch(() => {
    throw new Error('this is no picture that the browser can read');
  });
  try {
    const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
    const width = Math.max(1, Math.round(picture.width * scale));
    const height = Math.max(1, Math.round(picture.height * scale));
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    canvas.getContext('2d')?.drawImage(picture, 0, 0, width, height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
    if (!blob) throw new Error('the browser could not pack the picture');
    return { blob, width, height };
  } finally {
    picture.close();
  }
}
