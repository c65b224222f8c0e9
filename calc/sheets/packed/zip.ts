import { strToU8 } from 'fflate';
import { deflated } from './deflate.ts';

/**
 * Files as a ZIP, in their order, each with the same time.
 * @param files by their names in it
 * @param time `2000-01-01T00:00:00`, from 1980 on, without a zone: a ZIP holds the reading of a clock
 */
export function packedZip(files: Readonly<Record<string, Uint8Array>>, time: string): Uint8Array {
  const parts: Uint8Array[] = [];
  const list: Uint8Array[] = [];
  let at = 0;
  for (const [name, bytes] of Object.entries(files)) {
    const words = strToU8(name);
    const packed = deflated(bytes);
    const about = aboutFile(words, bytes, packed, clockOf(time));
    const head = record(30 + words.length, [[4, LOCAL], ...about]);
    head.set(words, 30);
    const entry = record(46 + words.length, [
      [4, LISTED],
      [2, VERSION],
      ...about,
      [2, 0],
      [2, 0],
      [2, 0],
      [4, 0],
      [4, at],
    ]);
    entry.set(words, 46);
    parts.push(head, packed);
    list.push(entry);
    at += head.length + packed.length;
  }
  const listed = list.reduce((sum, { length }) => sum + length, 0);
  const end = record(22, [
    [4, END],
    [2, 0],
    [2, 0],
    [2, list.length],
    [2, list.length],
    [4, listed],
    [4, at],
    [2, 0],
  ]);
  return joined([...parts, ...list, end]);
}

/** How many bytes a number has, the lowest first, and the number. */
type Field = readonly [size: 2 | 4, value: number];

// Of APPNOTE 6.3, the ZIP file format: the signs by which its records begin, and what a reader must know: 2.0, DEFLATE.
const LOCAL = 0x04034b50;
const LISTED = 0x02014b50;
const END = 0x06054b50;
const VERSION = 20;
/** Names are UTF-8. */
const UTF8 = 1 << 11;
const DEFLATE = 8;

/** A time as both records have it: hours, minutes and pairs of seconds, then years from 1980, months and days. */
function clockOf(time: string): readonly Field[] {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = time.split(/[-T:]/).map(Number);
  return [
    [2, (hour << 11) | (minute << 5) | (second >> 1)],
    [2, ((year - 1980) << 9) | (month << 5) | day],
  ];
}

/** What both records of a file say of it. */
const aboutFile = (
  words: Uint8Array,
  bytes: Uint8Array,
  packed: Uint8Array,
  clock: readonly Field[],
): readonly Field[] => [
  [2, VERSION],
  [2, UTF8],
  [2, DEFLATE],
  ...clock,
  [4, crc(bytes)],
  [4, packed.length],
  [4, bytes.length],
  [2, words.length],
  [2, 0],
];

function record(length: number, fields: readonly Field[]): Uint8Array {
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  let at = 0;
  for (const [size, value] of fields) {
    if (size === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += size;
  }
  return bytes;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const CRC = Int32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let i = 0; i < 8; i++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** The check sum of a ZIP: CRC-32. */
function crc(bytes: Uint8Array): number {
  let sum = -1;
  for (let i = 0; i < bytes.length; i++) sum = (sum >>> 8) ^ CRC[(sum ^ bytes[i]!) & 255]!;
  return ~sum >>> 0;
}
