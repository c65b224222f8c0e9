import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindOf } from '../../../web/underlay/file-kind.ts';
import { imageSize } from '../../../web/underlay/image-size.ts';
import { hashOf, keepBytes, keptBytes } from '../../../web/underlay/kept-bytes.ts';
import { dxf, pdf, png, svg } from '../../browser/underlay-files.ts';

const bytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(text));
const own = (buffer: Buffer): Uint8Array<ArrayBuffer> => new Uint8Array(buffer);

/** A baseline JPEG's header with an Exif segment before its frame (ITU-T T.81, annex B). */
const jpeg = new Uint8Array([
  0xff, 0xd8, 0xff, 0xe1, 0, 6, 0x45, 0x78, 0x69, 0x66, 0xff, 0xc4, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0x03, 0x20, 0x05,
  0x00, 1, 1, 0x11, 0, 0xff, 0xd9,
]);

describe('the kind of a file', () => {
  it('is told by what is in it, not by its name', async () => {
    expect(kindOf(own(png(20, 30)))).toBe('png');
    expect(kindOf(jpeg)).toBe('jpeg');
    expect(kindOf(own(await pdf()))).toBe('pdf');
    expect(kindOf(own(dxf()))).toBe('dxf');
    expect(kindOf(bytes('999\r\na note\r\n  0\r\nSECTION\r\n'))).toBe('dxf');
    expect(kindOf(own(svg()))).toBe('svg');
    expect(kindOf(bytes('<?xml version="1.0"?>\n<!-- drawn -->\n<svg width="1"/>'))).toBe('svg');
    expect(kindOf(bytes('\ufeff {"type":"Point"}'))).toBe('geojson');
    for (const other of ['', 'hello', '<html><svg></svg></html>', 'PK\u0003\u0004'])
      expect(kindOf(bytes(other))).toBeNull();
  });
  it('of any bytes is told or is null', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (any) => void kindOf(any)));
  });
});

describe('the size of a picture', () => {
  it('is read from its header before it is decoded', () => {
    expect(imageSize('png', own(png(640, 400)))).toEqual({ width: 640, height: 400 });
    expect(imageSize('jpeg', jpeg)).toEqual({ width: 1280, height: 800 });
  });
  it('of a cut or spoiled header is null or a size, never a throw or a hang', () => {
    const sound = own(png(8, 8));
    fc.assert(
      fc.property(
        fc.nat(60),
        fc.uint8Array({ maxLength: 40 }),
        fc.constantFrom('png' as const, 'jpeg' as const),
        (at, put, kind) => {
          const spoiled = new Uint8Array([...(kind === 'png' ? sound : jpeg).slice(0, at), ...put]);
          const size = imageSize(kind, spoiled);
          if (size) expect(size.width + size.height).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the files that the browser keeps', () => {
  it('are found by what is in them', async () => {
    const file = bytes('a plan');
    const hash = await hashOf(file);
    // FIPS 180-4 digest, by coreutils sha256sum.
    expect(await hashOf(bytes('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await keptBytes(hash, 1)).toBeNull();
    await keepBytes(hash, file, 2);
    expect(await keptBytes(hash, 3)).toEqual(file);
  });
  it('make room: the longest unused go first', async () => {
    const hashes: string[] = [];
    for (let i = 0; i < 45; i++) {
      const file = bytes(`file ${i}`);
      hashes.push(await hashOf(file));
      await keepBytes(hashes[i]!, file, 100 + i);
      // The first is looked at again and again.
      if (i > 0) await keptBytes(hashes[0]!, 100.5 + i);
    }
    expect(await keptBytes(hashes[0]!, 200)).not.toBeNull();
    expect(await keptBytes(hashes[44]!, 201)).not.toBeNull();
    expect(await keptBytes(hashes[1]!, 202)).toBeNull();
  });
});
