import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import {
  mergePhotos,
  type Photos,
  photoHashes,
  readRecordsBundle,
  writeRecordsBundle,
} from '../../../calc/field/records-bundle.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { TINY_JPEG, TINY_JPEG_HASH } from './tiny-jpeg.ts';

const photo = { hash: TINY_JPEG_HASH, bytes: TINY_JPEG.byteLength, width: 16, height: 12 };
const MARK: Mark = { id: 'a', of: 'D05', part: photo.hash, what: 'photo', by: 'JB', time: 1, photo };
const records = { format: 'overrow/records', version: 1, site: 'Lot', units: 'ft', records: [MARK] } as const;

describe('records with their photos', () => {
  test('come back as they were written, in any unzip; the same are the same bytes', () => {
    const bytes = writeRecordsBundle({ records, photos: new Map([[TINY_JPEG_HASH, TINY_JPEG]]) });
    expect(writeRecordsBundle({ records, photos: new Map([[TINY_JPEG_HASH, TINY_JPEG]]) })).toEqual(bytes);
    expect(Object.keys(unzipSync(bytes)).sort()).toEqual([`photos/${TINY_JPEG_HASH}.jpg`, 'records.json']);
    const read = readRecordsBundle(bytes);
    if (!read.ok) throw new RangeError(read.errors[0]?.says);
    expect(read.records).toEqual(records);
    expect([...read.photos]).toEqual([[TINY_JPEG_HASH, TINY_JPEG]]);
    // Without photos it is records alone.
    const bare = readRecordsBundle(writeRecordsBundle({ records, photos: new Map() }));
    expect(bare.ok && bare.photos.size).toBe(0);
  });

  test('are not read where they are damaged, no records, or far too large; what else is in the file stays there', () => {
    const whole = writeRecordsBundle({ records, photos: new Map([[TINY_JPEG_HASH, TINY_JPEG]]) });
    expect(readRecordsBundle(whole.subarray(0, whole.length / 2)).ok).toBe(false);
    expect(readRecordsBundle(zipSync({ 'other.json': strToU8('{}') }))).toMatchObject({
      errors: [{ place: 'records.json' }],
    });
    expect(readRecordsBundle(zipSync({ 'records.json': strToU8('{"format": "x"}') })).ok).toBe(false);
    const huge = zipSync({
      'records.json': strToU8(JSON.stringify(records)),
      [`photos/${'0'.repeat(64)}.jpg`]: new Uint8Array(9_000_000),
    });
    expect(readRecordsBundle(huge)).toMatchObject({
      ok: false,
      errors: [{ says: 'is larger than this page writes them' }],
    });
    const odd = zipSync({
      'records.json': strToU8(JSON.stringify(records)),
      '../evil.jpg': TINY_JPEG,
      [`photos/${'1'.repeat(64)}.jpg`]: strToU8('<html>'),
    });
    const read = readRecordsBundle(odd);
    expect(read.ok && read.photos.size).toBe(0);
  });

  test('have the photos of marks that stand, of both sides where two say different things, and of none that was taken back', () => {
    const other: Mark = { ...MARK, id: 'b', by: 'RL', photo: { ...photo, hash: 'f'.repeat(64) } };
    const back: Mark = {
      id: 'c',
      of: 'D05',
      part: photo.hash,
      what: 'photo',
      by: 'JB',
      time: 2,
      after: ['a'],
      gone: true,
    };
    expect(photoHashes([MARK, MARK])).toEqual([TINY_JPEG_HASH]);
    expect(photoHashes([MARK, other])).toEqual([TINY_JPEG_HASH, 'f'.repeat(64)].sort());
    expect(photoHashes([MARK, back])).toEqual([]);
  });
});

const hash = fc.integer({ min: 0, max: 5 }).map((digit) => String(digit).repeat(64));
// A picture is what its hash says, so that two of one name are alike.
const photosOf = fc
  .array(hash, { maxLength: 6 })
  .map((hashes): Photos => new Map(hashes.map((name) => [name, new Uint8Array([Number(name[0])])])));

test('merging photos is associative, commutative and idempotent, for three people', () => {
  fc.assert(
    fc.property(photosOf, photosOf, photosOf, (a, b, c) => {
      const list = (photos: Photos) => [...photos];
      expect(list(mergePhotos(a, mergePhotos(b, c)))).toEqual(list(mergePhotos(mergePhotos(a, b), c)));
      expect(list(mergePhotos(a, b))).toEqual(list(mergePhotos(b, a)));
      expect(list(mergePhotos(mergePhotos(a, b), b))).toEqual(list(mergePhotos(a, b)));
    }),
  );
});
