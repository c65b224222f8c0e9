import { steady } from '../../words/steady.ts';
import { ByteText } from '../byte-text.ts';

/** Collects the groups of a DXF, a code and a value each, and numbers what other groups refer to. */
export interface Tags {
  readonly add: (...pairs: readonly (readonly [code: number, value: string | number])[]) => void;
  /** A point under its three codes. */
  readonly point: (code: number, at: readonly number[]) => void;
  readonly text: ByteText;
}

export function tagList(): Tags {
  const text = new ByteText();
  const one = (code: number, value: string | number): void => {
    text.add(CODES[code]!);
    if (typeof value === 'number') addNumeral(text, code, value);
    else text.add(value);
    text.add('\n');
  };
  return {
    text,
    add: (...pairs) => {
      for (const [code, value] of pairs) one(code, value);
    },
    point: (code, [x = 0, y = 0, z = 0]) => {
      one(code, x);
      one(code + 10, y);
      one(code + 20, z);
    },
  };
}

/** The codes that there are, as lines. */
const CODES = Array.from({ length: 1072 }, (_, code) => `${code}\n`);

/** Ranges of codes whose values are whole numbers. */
const WHOLE = [
  [60, 99],
  [160, 179],
  [270, 299],
  [370, 389],
  [400, 409],
  [420, 429],
  [1060, 1071],
] as const;
/** By code, for a drawing has groups by the million. */
const IS_WHOLE = Array.from({ length: 1072 }, (_, code) => WHOLE.some(([from, to]) => code >= from && code <= to));

/** Whole numbers where the code asks for them, else with a point: some readers tell them apart by it. */
function addNumeral(text: ByteText, code: number, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError('a value of a drawing is a finite number');
  if (IS_WHOLE[code] === true) text.whole(Math.round(value));
  else if (!text.decimal(steady(value), '.0')) text.add(numeral(value));
}

function numeral(value: number): string {
  const words = String(Math.round(steady(value) * 1e9) / 1e9);
  // Less than a millionth is nothing.
  if (words.includes('e') || words === '-0') return '0.0';
  return words.includes('.') ? words : `${words}.0`;
}

/** Handles of a file: hexadecimal numbers, each once. */
export function handles(): { readonly next: () => string; readonly seed: () => string } {
  let last = 0x10;
  const words = (): string => last.toString(16).toUpperCase();
  return {
    next: () => {
      last++;
      return words();
    },
    seed: () => (last + 1).toString(16).toUpperCase(),
  };
}

/**
 * Text that is one group value: control characters dropped, for in this format a line end begins another group; the codes
 * of the format parted; signs outside ASCII by their number (`\U+5145`), in two parts where that has five digits.
 */
export const tagText = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')
    .replaceAll('%%', '% %')
    .replaceAll('^', '^ ')
    .replaceAll('\\U+', '\\ U+')
    .replace(/[^\x20-\x7e]/g, (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
