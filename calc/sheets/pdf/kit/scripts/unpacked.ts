import { unzlibSync } from 'fflate';

const HEAD = 44;
const ENTRY = 20;

/**
 * A WOFF as the font that is packed in it (W3C WOFF 1.0, section 4): its tables unpacked once, where a reader of the packed
 * file would do so for every glyph.
 */
export function unpacked(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  const count = from.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEAD + i * ENTRY;
    const [offset, packed, length] = [4, 8, 12].map((part) => from.getUint32(at + part)) as [number, number, number];
    const bytes = woff.subarray(offset, offset + packed);
    return {
      tag: from.getUint32(at),
      sum: from.getUint32(at + 16),
      bytes: packed < length ? unzlibSync(bytes, { out: new Uint8Array(length) }) : bytes,
    };
  });
  const padded = (length: number): number => (length + 3) & ~3;
  const start = 12 + 16 * count;
  const font = new Uint8Array(tables.reduce((sum, { bytes }) => sum + padded(bytes.length), start));
  const to = new DataView(font.buffer);
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, count);
  const power = Math.floor(Math.log2(count));
  to.setUint16(6, 16 * 2 ** power);
  to.setUint16(8, power);
  to.setUint16(10, 16 * (count - 2 ** power));
  let place = start;
  tables.forEach(({ tag, sum, bytes }, i) => {
    [tag, sum, place, bytes.length].forEach((value, k) => {
      to.setUint32(12 + 16 * i + 4 * k, value);
    });
    font.set(bytes, place);
    place += padded(bytes.length);
  });
  return font;
}
