import { METRES_PER_FOOT } from './units.ts';

type TypedUnit = 'foot' | 'inch' | 'm' | 'cm' | 'mm';

export const UNITS_PER_FOOT: Readonly<Record<TypedUnit, number>> = {
  foot: 1,
  inch: 12,
  m: METRES_PER_FOOT,
  cm: 100 * METRES_PER_FOOT,
  mm: 1000 * METRES_PER_FOOT,
};

// Two single marks are an inch mark, so inches are tried first.
const INCH = /^ *(?:"|''|(?:inches|inch|in)(?![a-z])\.?)/i;
const FOOT = /^ *(?:'|(?:feet|foot|ft)(?![a-z])\.?)/i;
const METRIC = /^ *(mm|cm|m)(?![a-z])/i;

/** The unit that stands at a character, spaces before it let pass; null where none does. */
export function unitAt(text: string, at: number): { readonly unit: TypedUnit; readonly end: number } | null {
  const rest = text.slice(at);
  const inch = INCH.exec(rest);
  if (inch !== null) return { unit: 'inch', end: at + inch[0].length };
  const foot = FOOT.exec(rest);
  if (foot !== null) return { unit: 'foot', end: at + foot[0].length };
  const metric = METRIC.exec(rest);
  if (metric === null) return null;
  return { unit: (metric[1] ?? 'm').toLowerCase() as TypedUnit, end: at + metric[0].length };
}

/** The many marks that keyboards, word processors and scans put for the few that mean something in a length. */
const SAME_MARK: ReadonlyMap<string, string> = new Map(
  Object.entries({
    "'": '\u2032\u2019\u2018\u02b9\u02bc\u00b4`',
    '"': '\u2033\u201d\u201c\u201f\u02ba',
    '-': '\u2212\u2013\u2014\u2010\u2011\u2012',
    '*': '\u00d7\u00b7\u2715',
    '/': '\u00f7\u2044\u2215',
  }).flatMap(([plain, others]) => Array.from(others, (other) => [other, plain] as const)),
);

/** The text with plain marks and plain spaces, character for character so that positions hold. */
export const plainText = (text: string): string =>
  text.replace(/[^\x20-\x7e]/g, (c) => SAME_MARK.get(c) ?? (/\s/.test(c) ? ' ' : c)).replaceAll('`', "'");
