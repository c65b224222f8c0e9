import { firstSize, sizesIn } from './sizes-in.ts';

/**
 * What a line of a price list fits, read from its spec: `*` any spec of its item; `400 to 600 A` a range; `at 600 A` a
 * point of the item's curve; anything else that one spec. A range or point may ask for more, with commas: `400 to 600 A,
 * 480 V` or `24 to 36 in deep, asphalt`.
 */
export interface LineForm {
  readonly kind: 'one' | 'range' | 'point' | 'any';
  /** Of a point, its size and unit. */
  readonly size?: { readonly value: number; readonly unit: string };
  readonly ranges: readonly { readonly low: number; readonly high: number; readonly unit: string }[];
  /** Words that the spec must have besides. */
  readonly words: readonly string[];
}

const FIGURE = String.raw`\d+(?:-\d+\/\d+|\/\d+|\.\d+)?`;
const RANGE = new RegExp(`^(${FIGURE}) to (${FIGURE}) (\\D.*)$`);
const POINT = new RegExp(`^at (${FIGURE}) (\\D.*)$`);

/** The form of a spec. A range that runs downwards and a second point are taken as words, which fit nothing. */
export function lineForm(spec: string): LineForm {
  if (spec === '*') return { kind: 'any', ranges: [], words: [] };
  const ranges: { low: number; high: number; unit: string }[] = [];
  const words: string[] = [];
  let size: LineForm['size'];
  for (const part of spec.split(',').map((words) => words.trim())) {
    const range = RANGE.exec(part);
    const point = POINT.exec(part);
    if (range && figure(range[1]!) <= figure(range[2]!))
      ranges.push({ low: figure(range[1]!), high: figure(range[2]!), unit: range[3]! });
    else if (point && size === undefined) size = { value: figure(point[1]!), unit: point[2]! };
    else words.push(part);
  }
  if (size !== undefined) return { kind: 'point', size, ranges, words };
  return ranges.length > 0 ? { kind: 'range', ranges, words } : { kind: 'one', ranges: [], words: [] };
}

const figure = (words: string): number => sizesIn(words)[0]!.value;

/** Whether a spec has the words of a form and lies in its ranges. */
export const fits = ({ ranges, words }: Pick<LineForm, 'ranges' | 'words'>, spec: string): boolean =>
  words.every((one) => hasWords(spec, one)) &&
  ranges.every(({ low, high, unit }) => {
    const size = firstSize(spec, unit);
    return size !== null && size >= low && size <= high;
  });

/** `480 V` is in `150 kVA, 480 V` and not in `1480 V`. */
function hasWords(spec: string, words: string): boolean {
  const at = spec.indexOf(words);
  if (at < 0) return false;
  const isApart = (sign: string | undefined): boolean => sign === undefined || !/[\p{L}\d./]/u.test(sign);
  if (isApart(spec[at - 1]) && isApart(spec[at + words.length])) return true;
  return hasWords(spec.slice(at + 1), words);
}
