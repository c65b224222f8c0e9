import { crc32, inflateRawSync, inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { unzipSync, zipSync, zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { deflated, zlibOf } from '../../../../calc/sheets/packed/deflate.ts';
import { packedZip } from '../../../../calc/sheets/packed/zip.ts';
import '../../../seed.ts';

/** Bytes that repeat themselves: pieces of few kinds, again and again. */
const repeating = fc
  .array(fc.tuple(fc.uint8Array({ minLength: 1, maxLength: 40 }), fc.integer({ min: 1, max: 400 })), { maxLength: 30 })
  .map((pieces) =>
    Uint8Array.from(
      pieces.flatMap(([piece, times]) =>
        Array(times)
          .fill([...piece])
          .flat(),
      ),
    ),
  );

/** The lines of a table as a page has them. */
const page = (rows: number): Uint8Array =>
  new TextEncoder().encode(
    Array.from(
      { length: rows },
      (_, i) => `BT /F1 8.229 Tf 1 0 0 1 60.16 ${(i * 13.539) % 700} Tm <002B002C000C${1000 + (i % 97)}0028> Tj ET\n`,
    ).join(''),
  );

/** Bytes of no order, always the same. */
const noise = (length: number): Uint8Array => {
  let state = 7;
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 24;
  });
};

const same = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

describe('what is deflated', () => {
  test('is read back by zlib as it was', () => {
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 2000 }), repeating), (bytes) => {
        expect(same(inflateSync(zlibOf(bytes)), bytes)).toBe(true);
        expect(same(inflateRawSync(deflated(bytes)), bytes)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test.each([
    ['nothing', new Uint8Array(0)],
    ['one byte', Uint8Array.of(65)],
    ['one byte, a million times', new Uint8Array(1_000_000)],
    ['more letters than a block holds, none repeated', noise(200_000)],
    [
      'repeats from as far back as there are any',
      Uint8Array.from([...noise(32_768), ...noise(32_768), ...noise(33_000)]),
    ],
    ['a page of a table', page(5000)],
    [
      'signs of which each occurs nearly twice as often as the next: codes that would be too long',
      scattered(Array.from({ length: 18 }, (_, i) => Array<number>(fibonacci(i)).fill(i)).flat()),
    ],
  ])('%s is read back', (_, bytes) => {
    expect(same(inflateSync(zlibOf(bytes)), bytes)).toBe(true);
  });

  test('is the same bytes whatever was deflated before', () => {
    const first = zlibOf(page(300));
    for (let i = 0; i < 40; i++) zlibOf(noise(1 + i * 997));
    expect(same(zlibOf(page(300)), first)).toBe(true);
  });

  test('is hardly longer than it was where it has no order, and as short as by others where it has', () => {
    const plain = noise(150_000);
    expect(deflated(plain).length).toBeLessThan(plain.length + 100);
    expect(deflated(page(5000)).length).toBeLessThan(1.1 * zlibSync(page(5000)).length);
  });
});

/** The same signs in an order in which hardly five in a row are met twice. */
function scattered(signs: readonly number[]): Uint8Array {
  const keys = noise(4 * signs.length);
  const key = (i: number): number => keys[4 * i]! * 65_536 + keys[4 * i + 1]! * 256 + keys[4 * i + 2]!;
  return Uint8Array.from([...signs.keys()].sort((a, b) => key(a) - key(b)).map((i) => signs[i]!));
}

function fibonacci(n: number): number {
  let [a, b] = [1, 1];
  for (let i = 0; i < n; i++) [a, b] = [b, a + b];
  return a;
}

describe('a ZIP', () => {
  const files = { 'a.txt': page(10), 'folder/é 充.bin': noise(999), empty: new Uint8Array(0) };
  const zip = packedZip(files, '2020-02-03T04:05:06');

  test('is read back with its names', () => {
    const back = unzipSync(zip);
    expect(Object.keys(back)).toEqual(Object.keys(files));
    for (const [name, bytes] of Object.entries(files)) expect(same(back[name]!, bytes), name).toBe(true);
  });

  test('has the check sums of what it holds', () => {
    const view = new DataView(zip.buffer, zip.byteOffset);
    expect(view.getUint32(14, true)).toBe(crc32(files['a.txt']));
  });

  test('has the time that it is told, as another writer has it', () => {
    const theirs = zipSync({ 'a.txt': page(10) }, { mtime: '2020-02-03T04:05:06' });
    expect([...zip.subarray(10, 14)]).toEqual([...theirs.subarray(10, 14)]);
  });
});
