import { isDict, isList, nameOf, type PdfDict, type PdfValue, pdfValueAt } from './values.ts';

/** Looks up the objects of a PDF by their numbers. */
export interface PdfObjects {
  /** The value itself, or what it refers to. */
  readonly follow: (value: PdfValue | undefined) => PdfValue;
  /** What a stream holds, unpacked, as bytes in letters; null where it is none, packed in another way, or too large. */
  readonly stream: (value: PdfValue | undefined) => Promise<string | null>;
}

/** So much of an object is read, and so much is unpacked: of one stream, and of all. */
const OBJECT_CHARS = 200_000;
const STREAM_BYTES = 8_000_000;
const ALL_BYTES = 64_000_000;
const MOST_OBJECTS = 2_000_000;

interface Found {
  /** Place in the file, by which the later of two objects of one number is known. */
  readonly at: number;
  /** Text of the stream that it stands in, and its place there; null where it stands in the file. */
  readonly within: { readonly text: string; readonly from: number } | null;
}

/**
 * The objects of a PDF, found by going through its bytes: no table of the file is trusted, and the last of a number counts.
 * Objects within packed streams (ISO 32000-1, 7.5.7) are looked up too, up to a bound.
 */
export async function pdfObjects(bytes: Uint8Array): Promise<PdfObjects> {
  const found = new Map<number, Found>();
  for (const [number, at] of placesOfObjects(bytes)) found.set(number, { at, within: null });
  const textAt = (at: number, length: number): string => latin1(bytes.subarray(at, at + length));

  const get = (number: number): { readonly value: PdfValue; readonly end: number } | null => {
    const one = found.get(number);
    if (!one) return null;
    if (one.within) return pdfValueAt(one.within.text, one.within.from);
    const { value, end } = pdfValueAt(textAt(one.at, OBJECT_CHARS), 0);
    return { value, end: one.at + end };
  };
  const follow = (value: PdfValue | undefined): PdfValue => {
    let now = value ?? null;
    for (let steps = 0; steps < 8 && isRef(now); steps++) now = get(now.ref)?.value ?? null;
    return isRef(now) ? null : now;
  };
  const stream = async (value: PdfValue | undefined, most = STREAM_BYTES): Promise<string | null> => {
    if (value === undefined || !isRef(value) || found.get(value.ref)?.within !== null) return null;
    const { value: dict, end } = get(value.ref)!;
    if (!isDict(dict)) return null;
    const raw = rawStream(bytes, dict, end, follow);
    if (raw === null) return null;
    const filters = [dict.get('Filter') ?? null].flatMap((one) => (isList(one) ? one : one === null ? [] : [one]));
    if (filters.length === 0) return raw.length <= most ? latin1(raw) : null;
    const parms = follow(dict.get('DecodeParms'));
    if (filters.length > 1 || nameOf(follow(filters[0])) !== 'FlateDecode' || (isDict(parms) && parms.has('Predictor')))
      return null;
    return inflated(raw, most);
  };

  let left = ALL_BYTES;
  for (const [number, { at }] of [...found]) {
    if (left <= 0) break;
    if (!textAt(at, 400).includes('/ObjStm')) continue;
    const dict = follow({ ref: number });
    const text = await stream({ ref: number }, Math.min(left, STREAM_BYTES));
    if (text === null || !isDict(dict)) continue;
    left -= text.length;
    const first = dict.get('First');
    if (typeof first !== 'number') continue;
    const heads = text.slice(0, first).trim().split(/\s+/).map(Number);
    for (let i = 0; i + 1 < heads.length; i += 2) {
      const [own, from] = [heads[i]!, heads[i + 1]!];
      if ((found.get(own)?.at ?? -1) < at) found.set(own, { at, within: { text, from: first + from } });
    }
  }
  return { follow, stream };
}

const isRef = (value: PdfValue): value is { readonly ref: number } =>
  typeof value === 'object' && value !== null && 'ref' in value;

const [O, B, J, ZERO, NINE] = [0x6f, 0x62, 0x6a, 0x30, 0x39];
const isDigit = (byte: number): boolean => byte >= ZERO && byte <= NINE;
const isSpace = (byte: number): boolean => byte === 32 || (byte >= 9 && byte <= 13) || byte === 0;

/** Number and place after `obj` of each object, in the order of the file. */
function* placesOfObjects(bytes: Uint8Array): Generator<readonly [number: number, at: number]> {
  let count = 0;
  for (let j = bytes.indexOf(J); j >= 0 && count < MOST_OBJECTS; j = bytes.indexOf(J, j + 1)) {
    if (bytes[j - 1] !== B || bytes[j - 2] !== O) continue;
    let at = j - 3;
    const back = (is: (byte: number) => boolean): string => {
      const end = at;
      while (at >= 0 && end - at < 10 && is(bytes[at]!)) at -= 1;
      return latin1(bytes.subarray(at + 1, end + 1));
    };
    back(isSpace);
    if (back(isDigit) === '' || back(isSpace) === '') continue;
    const number = back(isDigit);
    if (number === '') continue;
    count += 1;
    yield [Number(number), j + 1];
  }
}

function rawStream(bytes: Uint8Array, dict: PdfDict, end: number, follow: PdfObjects['follow']): Uint8Array | null {
  const begin = /^\s*stream(\r\n|\n|\r)/.exec(latin1(bytes.subarray(end, end + 64)));
  if (!begin) return null;
  const from = end + begin[0].length;
  const length = follow(dict.get('Length'));
  return typeof length === 'number' && length >= 0 && from + length <= bytes.length
    ? bytes.subarray(from, from + length)
    : null;
}

/** Unpacked (zlib) up to so many bytes; null where there are more, or where it is damaged. */
async function inflated(packed: Uint8Array, most: number): Promise<string | null> {
  const source = new Blob([packed.slice()]).stream().pipeThrough(new DecompressionStream('deflate'));
  const reader = source.getReader();
  const parts: string[] = [];
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return parts.join('');
      size += value.length;
      if (size > most) {
        await reader.cancel();
        return null;
      }
      parts.push(latin1(value));
    }
  } catch {
    return null;
  }
}

/** A byte a letter: the decoder of the same name gives other letters to 32 of them. */
function latin1(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return text;
}
