import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { deleteDB, openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { fileKind, looksLikeGround } from '../../../web/underlay/picked/file-kind.ts';
import { hashOf, keepBytes, keptBytes } from '../../../web/underlay/picked/kept-bytes.ts';
import { otherKind } from '../../../web/underlay/picked/other-kinds.ts';
import { imageSize, isTurned } from '../../../web/underlay/reading/image-size.ts';
import { sizedSvg, svgLeftOut, svgSize } from '../../../web/underlay/reading/svg-size.ts';
import { textOfBytes } from '../../../web/underlay/reading/text-of-bytes.ts';
import { dxf, pdf, png, svg } from '../../browser/underlay-files.ts';

const bytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(text));
const bytesOf = bytes;
const own = (buffer: Buffer): Uint8Array<ArrayBuffer> => new Uint8Array(buffer);

/** A baseline JPEG's header with an Exif segment before its frame (ITU-T T.81, annex B). */
const jpeg = new Uint8Array([
  0xff, 0xd8, 0xff, 0xe1, 0, 6, 0x45, 0x78, 0x69, 0x66, 0xff, 0xc4, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0x03, 0x20, 0x05,
  0x00, 1, 1, 0x11, 0, 0xff, 0xd9,
]);

describe('the kind of a file', () => {
  it('is told by what is in it, not by its name', async () => {
    expect(fileKind(own(png(20, 30)))).toBe('png');
    expect(fileKind(jpeg)).toBe('jpeg');
    expect(fileKind(own(await pdf()))).toBe('pdf');
    expect(fileKind(own(dxf()))).toBe('dxf');
    expect(fileKind(bytes('999\r\na note\r\n  0\r\nSECTION\r\n'))).toBe('dxf');
    expect(fileKind(own(svg()))).toBe('svg');
    expect(fileKind(bytes('<?xml version="1.0"?>\n<!-- drawn -->\n<svg width="1"/>'))).toBe('svg');
    for (const head of [
      '<svg:svg xmlns:svg="x">',
      '<!DOCTYPE svg [<!ENTITY a "b">]>\n<svg>',
      '<?xml-stylesheet href="a.css"?><svg>',
    ])
      expect(fileKind(bytes(head)), head).toBe('svg');
    expect(fileKind(bytes('\ufeff {"type":"Point"}'))).toBe('geojson');
    for (const other of ['', 'hello', '<html><svg></svg></html>', 'PK\u0003\u0004'])
      expect(fileKind(bytes(other))).toBeNull();
  });
  it('of any bytes is told or is null', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (any) => void fileKind(any)));
  });
});

describe('a file that cannot lie under a drawing', () => {
  const binary = (...parts: readonly (string | number)[]): Uint8Array =>
    new Uint8Array(parts.flatMap((part) => (typeof part === 'number' ? [part] : [...Buffer.from(part, 'latin1')])));
  it('is named, with what to save it as', () => {
    // First bytes by the formats' own descriptions.
    for (const [bytes, says] of [
      [binary('AC1032', 0, 0, 0, 0), 'is a DWG: save it as a text DXF'],
      [binary('AC1015', 0, 0), 'is a DWG: save it as a text DXF'],
      [binary('Drawing Binary DXF\r\n', 26, 0), 'is a binary DXF: save it as a text DXF'],
      [binary('II*', 0, 8, 0, 0, 0), 'is a TIFF: save it as a PNG'],
      [binary('MM', 0, 42, 0, 0, 0, 8), 'is a TIFF: save it as a PNG'],
      [binary('GIF89a'), 'is a GIF: save it as a PNG'],
      [binary(0, 0, 39, 10, 0, 0), 'is a shapefile: save it as GeoJSON in WGS 84'],
      [binary('PK', 3, 4, 20, 0), 'is a ZIP: unpack it and pick what is in it'],
      [bytesOf('<?xml version="1.0"?><kml xmlns="x"><Document/></kml>'), 'is a KML: save it as GeoJSON'],
      [bytesOf('<!DOCTYPE html><html><body></body></html>'), 'is a page of the web: save it as a PDF'],
      [bytesOf(''), 'is empty'],
      [bytesOf('hello'), 'is no PNG, JPEG, PDF, SVG, DXF or GeoJSON'],
    ] as const) {
      expect(fileKind(bytes)).toBeNull();
      expect(otherKind(bytes)).toBe(says);
    }
  });
  it('of any bytes has words', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (any) => otherKind(any) !== ''));
  });
});

describe('a JSON file that is dropped', () => {
  it('is of the ground or a site by what is in it', () => {
    for (const text of [
      '{"type": "FeatureCollection", "features": []}',
      '{"geometryType":"esriGeometryPolygon"}',
      '{"type":"Topology"}',
    ])
      expect(looksLikeGround(bytes(text)), text).toBe(true);
    for (const text of ['{"format": "overrow/site", "type": "Feature"}', '{}', '[1]', '{"name": "lot"}'])
      expect(looksLikeGround(bytes(text)), text).toBe(false);
  });
});

describe('the text of a drawing', () => {
  const old = (page: string, ...letters: readonly number[]): string =>
    textOfBytes(new Uint8Array([...Buffer.from(`9\r\n$DWGCODEPAGE\r\n3\r\n${page}\r\n1\r\n`, 'latin1'), ...letters]))
      .slice(-2)
      .trim();
  it('is decoded by the code page that it names', () => {
    // Code charts of the pages: Cyrillic zhe, katakana te, l with stroke, e with acute.
    expect(old('ANSI_1251', 0xe6)).toBe('ж');
    expect(old('ANSI_932', 0x83, 0x65)).toBe('テ');
    expect(old('ANSI_1250', 0xb3)).toBe('ł');
    expect(old('ANSI_1252', 0xe9)).toBe('é');
    expect(old('nonsense', 0xe9)).toBe('é');
  });
  it('is UTF-8 where it can be, and has its letters of several bytes', () => {
    expect(textOfBytes(bytes('Straße'))).toBe('Straße');
    expect(textOfBytes(bytes('a \\M+18365 b'))).toBe('a テ b');
  });
});

describe('the size of an SVG', () => {
  it('is that of its root, of its viewBox, or none', () => {
    expect(svgSize('<svg width="841mm" height="594mm" viewBox="0 0 841 594">')).toMatchObject({
      width: expect.closeTo(3178.58, 2),
      onPaper: true,
    });
    expect(svgSize("<?xml version='1.0'?><svg:svg width='36in' height='24in'>")).toEqual({
      width: 3456,
      height: 2304,
      onPaper: true,
    });
    expect(svgSize('<svg viewBox="10 20 200 100">')).toEqual({ width: 200, height: 100, onPaper: false });
    expect(svgSize('<svg width="50" viewBox="0,0,200,100">')).toEqual({ width: 50, height: 25, onPaper: false });
    for (const none of [
      '<svg>',
      '<svg width="100%" height="100%">',
      '<svg data-width="3" height="4">',
      '<svg viewBox="0 0 0 9">',
      '',
    ])
      expect(svgSize(none), none).toBeNull();
  });
  it('is given to one that says none, over what it says', () => {
    expect(sizedSvg('<!-- a --><svg width="100%" xmlns="x"><g width="3"/></svg>', 40, 30)).toBe(
      '<!-- a --><svg width="40" height="30" xmlns="x"><g width="3"/></svg>',
    );
  });
  it('says what a picture cannot show of it', () => {
    expect(
      svgLeftOut(
        '<svg><image href="a.png"/><image xlink:href=\'b.png\'/><image href="data:image/png;base64,AA"/></svg>',
      ),
    ).toMatch(/^2 linked pictures/);
    expect(svgLeftOut('<svg><foreignObject/></svg>')).toMatch(/foreignObject/);
    expect(svgLeftOut('<svg><path d="M0 0"/></svg>')).toBeNull();
  });
});

describe('the size of a picture', () => {
  it('is read from its header before it is decoded', () => {
    expect(imageSize('png', own(png(640, 400)))).toEqual({ width: 640, height: 400 });
    expect(imageSize('jpeg', jpeg)).toEqual({ width: 1280, height: 800 });
  });
  it('is turned where the picture says that it lies on its side (Exif 2.3)', () => {
    const exif = (orientation: number, little: boolean): Uint8Array => {
      const view = new DataView(new ArrayBuffer(40));
      [0xff, 0xd8, 0xff, 0xe1, 0, 36, 0x45, 0x78, 0x69, 0x66, 0, 0].forEach((byte, i) => {
        view.setUint8(i, byte);
      });
      view.setUint16(12, little ? 0x4949 : 0x4d4d);
      view.setUint16(14, 42, little);
      view.setUint32(16, 8, little);
      view.setUint16(20, 1, little);
      view.setUint16(22, 0x0112, little);
      view.setUint16(24, 3, little);
      view.setUint32(26, 1, little);
      view.setUint16(30, orientation, little);
      return new Uint8Array(view.buffer);
    };
    for (const little of [true, false])
      expect([1, 2, 3, 4, 5, 6, 7, 8].map((each) => isTurned(exif(each, little)))).toEqual([
        false,
        false,
        false,
        false,
        true,
        true,
        true,
        true,
      ]);
    expect(isTurned(jpeg)).toBe(false);
    fc.assert(
      fc.property(fc.nat(39), fc.nat(255), (at, value) => {
        const spoiled = exif(6, true);
        spoiled[at] = value;
        isTurned(spoiled);
      }),
    );
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
  it('that were kept by an earlier version are still there, and go in their turn', async () => {
    await deleteDB('overrow.underlays');
    const file = bytes('an old file');
    const hash = await hashOf(file);
    const before = await openDB('overrow.underlays', 1, {
      upgrade: (database) => database.createObjectStore('files', { keyPath: 'hash' }).createIndex('used', 'used'),
    });
    await before.put('files', { hash, bytes: file, used: 50 });
    before.close();
    for (let i = 0; i < 39; i++) await keepBytes(await hashOf(bytes(`new ${i}`)), bytes(`new ${i}`), 60 + i);
    expect(await keptBytes(hash, 55)).toEqual(file);
    await keepBytes(await hashOf(bytes('one more')), bytes('one more'), 200);
    expect(await keptBytes(hash, 201)).toBeNull();
    expect(await keptBytes(await hashOf(bytes('new 0')), 202)).not.toBeNull();
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
