/** A number as people type it: `12`, `12.5`, `.5`, `6 1/2`, `6-1/2`, `1/2`, or with a fraction sign. */
export interface Quantity {
  readonly value: number;
  readonly form: 'whole' | 'decimal' | 'mixed' | 'dashed' | 'slashed' | 'sign';
  /** False for a fraction of 1 or more behind a whole number, or one over 0. */
  readonly proper: boolean;
  readonly end: number;
}

const FRACTION_SIGNS: ReadonlyMap<string, number> = new Map([
  ['\u00bd', 1 / 2],
  ['\u2153', 1 / 3],
  ['\u2154', 2 / 3],
  ['\u00bc', 1 / 4],
  ['\u00be', 3 / 4],
  ['\u215b', 1 / 8],
  ['\u215c', 3 / 8],
  ['\u215d', 5 / 8],
  ['\u215e', 7 / 8],
]);
const SIGN = `[${[...FRACTION_SIGNS.keys()].join('')}]`;

// Nothing that goes on as a number may follow: 1/2.5 is a division.
const MIXED = new RegExp(`(\\d+)(?:( +|-)(\\d+)/(\\d+)|( *|-)(${SIGN}))(?![\\d.])`, 'y');
const FRACTION = new RegExp(`(?:(\\d+)/(\\d+)|(${SIGN}))(?![\\d.])`, 'y');
const NUMBER = /\d+\.?\d*|\.\d+/y;

/** The number that begins at a character; null where none does. */
export function quantityAt(text: string, at: number): Quantity | null {
  const mixed = match(MIXED, text, at);
  if (mixed !== null) {
    const [all, whole, space, over, under, signSpace, sign] = mixed;
    const part = sign === undefined ? Number(over) / Number(under) : (FRACTION_SIGNS.get(sign) ?? 0);
    const form = (space ?? signSpace) === '-' ? 'dashed' : 'mixed';
    return { value: Number(whole) + part, form, proper: part < 1, end: at + all.length };
  }
  const fraction = match(FRACTION, text, at);
  if (fraction !== null) {
    const [all, over, under, sign] = fraction;
    const value = sign === undefined ? Number(over) / Number(under) : (FRACTION_SIGNS.get(sign) ?? 0);
    const form = sign === undefined ? 'slashed' : 'sign';
    return { value, form, proper: Number(under) !== 0, end: at + all.length };
  }
  const number = match(NUMBER, text, at);
  if (number === null) return null;
  const form = /^\d+$/.test(number[0]) ? 'whole' : 'decimal';
  return { value: Number(number[0]), form, proper: true, end: at + number[0].length };
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}
