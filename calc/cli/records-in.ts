import { createHash } from 'node:crypto';
import { mergeMarks, missingFrom } from '../../routing/site/records/merge.ts';
import { marksIn, type RecordsFile, readRecords } from '../../routing/site/records/records-file.ts';
import type { Mark, SiteFile } from '../../routing/site/site.ts';
import { isBundle, mergePhotos, type Photos, readRecordsBundle } from '../field/records-bundle.ts';
import type { Machine } from './machine.ts';

/** One file whose records came in: how many of its marks were new. */
export interface CameIn {
  readonly path: string;
  readonly records: RecordsFile;
  readonly marks: readonly Mark[];
}

export type RecordsIn =
  | {
      readonly ok: true;
      /** The marks of all, in the units of the first file. */
      readonly all: readonly Mark[];
      readonly came: readonly CameIn[];
      readonly photos: Photos;
    }
  | { readonly ok: false; readonly reason: string };

/** A site's records with those of other files: records, records with photos, copies of the site. */
export function recordsIn(file: SiteFile, paths: readonly string[], machine: Machine): RecordsIn {
  const faults: string[] = [];
  const came: CameIn[] = [];
  let all = mergeMarks(file.records ?? [], []);
  let photos: Photos = new Map();
  for (const path of paths) {
    const other = recordsAt(path, machine);
    if (typeof other === 'string') {
      faults.push(other);
      continue;
    }
    const marks = missingFrom(marksIn(file.units, other.records), all);
    all = mergeMarks(all, marks);
    photos = mergePhotos(photos, other.photos);
    came.push({ path, records: other.records, marks });
  }
  return faults.length > 0 ? { ok: false, reason: faults.join('\n') } : { ok: true, all, came, photos };
}

const NO_PHOTOS: Photos = new Map();
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function recordsAt(
  path: string,
  machine: Machine,
): { readonly records: RecordsFile; readonly photos: Photos } | string {
  const told = (errors: readonly { readonly place: string; readonly says: string }[]): string =>
    errors.map(({ place, says }) => `${path}: ${place ? `${place}: ` : ''}${says}`).join('\n');
  try {
    if (!path.endsWith('.zip')) {
      const read = readRecords(machine.read(path));
      return read.ok ? { records: read.file, photos: NO_PHOTOS } : told(read.errors);
    }
    const bytes = machine.bytes(path);
    const read = isBundle(bytes) ? readRecordsBundle(bytes) : null;
    if (!read) return `${path}: is no ZIP file`;
    if (!read.ok) return told(read.errors);
    const odd = [...read.photos].find(([hash, photo]) => sha256(photo) !== hash);
    return odd ? `${path}: photos/${odd[0]}.jpg: is another picture than its name says` : read;
  } catch (error) {
    return `${path}: cannot be read: ${error instanceof Error ? error.message : String(error)}`;
  }
}
