/** A spreadsheet's guard against formulas, an apostrophe before the text, is no part of a name. */
export const unguarded = (text: string): string => (/^'[=+\-@]/.test(text) ? text.slice(1) : text);

/** `$1,234.50`, `1234.5`, `USD 12`: an amount of money or a plain number; null where it is none. */
export function amountIn(words: string): number | null {
  const plain = words.replace(/^(?:[$€£]|USD)\s*|\s*(?:[$€£]|USD)$/g, '').trim();
  if (!/^[+-]?(?:\d+|\d{1,3}(?:,\d{3})+)?(?:\.\d*)?(?:e[+-]?\d+)?$/i.test(plain) || !/\d/.test(plain)) return null;
  const value = Number(plain.replaceAll(',', ''));
  return Number.isFinite(value) ? value : null;
}

/** A unit in which suppliers price: what is counted, where the word says so, and of how many the price is. */
export interface SupplierUnit {
  readonly unit: 'ft' | 'each' | null;
  readonly of: number;
}

const COUNTED: Readonly<Record<string, 'ft' | 'each'>> = {
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  lf: 'ft',
  each: 'each',
  ea: 'each',
  e: 'each',
  pc: 'each',
  pcs: 'each',
};
const HOW_MANY: Readonly<Record<string, number>> = { c: 100, 100: 100, m: 1000, 1000: 1000, '1,000': 1000 };

/** `each`, `ea`, `ft`, `C`, `M`, `C ft`, `per 100 ft`, `/M`, `MFT`; null where it is none of them. */
export function unitIn(words: string): SupplierUnit | null {
  const plain = words
    .toLowerCase()
    .replace(/^(?:per|\/|\$\/)\s*/, '')
    .replace(/\.$/, '')
    .trim();
  const counted = Object.hasOwn(COUNTED, plain) ? COUNTED[plain] : undefined;
  if (counted) return { unit: counted, of: 1 };
  const [, many = '', rest = ''] = /^(c|m|100|1,?000)\s*(.*)$/.exec(plain) ?? [];
  const of = Object.hasOwn(HOW_MANY, many) ? HOW_MANY[many] : undefined;
  if (of === undefined) return null;
  if (rest === '') return { unit: null, of };
  return Object.hasOwn(COUNTED, rest) ? { unit: COUNTED[rest]!, of } : null;
}

/** A day as `2026-12-31`, or as `12/31/2026`; null where it is none. */
export function dayIn(words: string): string | null {
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/.exec(words);
  const spoken = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(words);
  const [year, month, day] = iso ? iso.slice(1) : spoken ? [spoken[3], spoken[1], spoken[2]] : [];
  if (year === undefined || month === undefined || day === undefined) return null;
  const [y, m, d] = [Number(year), Number(month), Number(day)];
  const days = [31, y % 4 === 0 && (y % 100 !== 0 || y % 400 === 0) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  if (m < 1 || m > 12 || d < 1 || d > days[m - 1]!) return null;
  return `${year}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`;
}
