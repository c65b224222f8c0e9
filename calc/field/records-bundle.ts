import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { type RecordsFile, readRecords, writeRecords } from '../../routing/site/records/records-file.ts';
import { registersOf } from '../../routing/site/records/registers.ts';
import type { Mark } from '../../routing/site/site.ts';

/** Photos by their hashes (SHA-256 of the JPEG), so that the same picture is one however often it comes. */
export type Photos = ReadonlyMap<string, Uint8Array>;

/** Records with the photos that their marks speak of: `NAME.records.zip`. */
export interface RecordsBundle {
  readonly records: RecordsFile;
  readonly photos: Photos;
}

export type RecordsBundleRead =
  | ({ readonly ok: true } & RecordsBundle)
  | { readonly ok: false; readonly errors: readonly { readonly place: string; readonly says: string }[] };

const RECORDS = 'records.json';
/** Most bytes of the photos of one bundle, of one photo as it is kept, and of its records. */
export const MOST_BUNDLE_BYTES = 240_000_000;
const MOST_PHOTO_BYTES = 8_000_000;
const MOST_TEXT_BYTES = 64_000_000;
/** The same records are the same bytes. */
const NO_TIME = new Date(1980, 0, 1);

const nameOf = (hash: string): string => `photos/${hash}.jpg`;
const PHOTO_NAME = /^photos\/([0-9a-f]{64})\.jpg$/;

/** The hashes of the photos that stand in a list of marks, each once, in the order of their digits. */
export const photoHashes = (marks: readonly Mark[]): readonly string[] =>
  [
    ...new Set(
      [...registersOf(marks).values()].flatMap(({ heads }) =>
        heads.flatMap(({ gone, photo }) => (photo && !gone ? [photo.hash] : [])),
      ),
    ),
  ].sort();

/** All photos of two bundles, each once. It does not matter who merges what with whom, in what order and how often. */
export const mergePhotos = (a: Photos, b: Photos): Photos =>
  new Map([...a, ...b].sort(([one], [other]) => (one < other ? -1 : 1)));

/** Records and photos as one ZIP file; pictures are packed already. Throws a RangeError where they are too many for one. */
export function writeRecordsBundle({ records, photos }: RecordsBundle): Uint8Array<ArrayBuffer> {
  const bytes = [...photos.values()].reduce((sum, photo) => sum + photo.byteLength, 0);
  if (bytes > MOST_BUNDLE_BYTES)
    throw new RangeError(`the photos come to over ${MOST_BUNDLE_BYTES / 1e6} MB, more than one file takes`);
  const files = Object.fromEntries([
    [RECORDS, [strToU8(writeRecords(records)), { level: 9, mtime: NO_TIME }] as const],
    ...[...mergePhotos(photos, new Map())].map(
      ([hash, photo]) => [nameOf(hash), [photo, { level: 0, mtime: NO_TIME }] as const] as const,
    ),
  ]);
  return new Uint8Array(zipSync(files as Parameters<typeof zipSync>[0]));
}

/** Whether bytes begin as those of a ZIP file do. */
export const isBundle = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/**
 * Reads records with photos; whether each photo is what its name says is for the caller to check, who has a hash at hand.
 * What else is in the file is left there.
 */
export function readRecordsBundle(bytes: Uint8Array): RecordsBundleRead {
  const fault = (place: string, says: string): RecordsBundleRead => ({ ok: false, errors: [{ place, says }] });
  let [photoBytes, tooMuch] = [0, ''];
  let files: Readonly<Record<string, Uint8Array>>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        const isPhoto = PHOTO_NAME.test(name);
        if (name !== RECORDS && !isPhoto) return false;
        if (originalSize > (isPhoto ? MOST_PHOTO_BYTES : MOST_TEXT_BYTES)) tooMuch = name;
        if (isPhoto) photoBytes += originalSize;
        return tooMuch === '' && photoBytes <= MOST_BUNDLE_BYTES;
      },
    });
  } catch {
    return fault('', 'the file is damaged, or was cut short');
  }
  if (tooMuch !== '') return fault(tooMuch, 'is larger than this page writes them');
  if (photoBytes > MOST_BUNDLE_BYTES) return fault('photos', `come to over ${MOST_BUNDLE_BYTES / 1e6} MB`);
  const text = files[RECORDS];
  if (!text) return fault(RECORDS, 'is not in it: this is no file of records with photos');
  const read = readRecords(strFromU8(text));
  if (!read.ok)
    return { ok: false, errors: read.errors.map(({ place, says }) => ({ place: `${RECORDS} ${place}`.trim(), says })) };
  const photos = Object.entries(files).flatMap(([name, photo]): [string, Uint8Array][] => {
    const hash = PHOTO_NAME.exec(name)?.[1];
    return hash !== undefined && isJpeg(photo) ? [[hash, photo]] : [];
  });
  return { ok: true, records: read.file, photos: mergePhotos(new Map(photos), new Map()) };
}

const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
