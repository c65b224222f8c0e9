import { inert } from './inert.ts';
import { codeOf, printable } from './printable.ts';

/** Places that are named one by one; of more only how many. */
const MOST_TOLD = 8;

const PLAIN = /^[\x20-\x7e]*$/;

/**
 * What cannot be printed as it was written, a sentence for each place in a site: the field, the element that it is of, and
 * the signs that no typeface has, with how they are printed.
 * @param data a site, or what has its names
 * @param has whether a typeface has a sign
 */
export function unprintedWords(data: object, has: (code: number) => boolean): readonly string[] {
  const told: string[] = [];
  let more = 0;
  const look = (value: unknown, field: string, of: string): void => {
    if (typeof value === 'string') {
      const signs = PLAIN.test(value) ? [] : signsLacking(value, has);
      if (signs.length === 0) return;
      if (told.length < MOST_TOLD) told.push(sentence(`${field}${of}`, signs));
      else more++;
    } else if (Array.isArray(value)) {
      value.forEach((one, i) => {
        if (typeof one === 'string') look(one, `line ${i + 1} of ${field}`, of);
        else look(one, field, isNamed(one) ? ` of ${one.id} (${field})` : ` in ${field}, number ${i + 1}`);
      });
    } else if (typeof value === 'object' && value !== null && !ArrayBuffer.isView(value))
      for (const [name, one] of Object.entries(value)) {
        const isDeep = typeof one === 'object' && one !== null && !Array.isArray(one);
        look(one, name, isDeep ? ` in ${name}` : of);
      }
  };
  look(data, 'site', ' of the site');
  return more === 0 ? told : [...told, `So in ${more} more places.`];
}

const isNamed = (value: unknown): value is { readonly id: string } =>
  typeof value === 'object' && value !== null && typeof (value as { readonly id?: unknown }).id === 'string';

/** Signs of a text that are printed by their number, each once. */
const signsLacking = (text: string, has: (code: number) => boolean): readonly string[] =>
  [...new Set(inert(text))].filter((sign) => !has(sign.codePointAt(0)!) && printable(sign, has) === standIn(sign));

const standIn = (sign: string): string => `[${codeOf(sign)}]`;

function sentence(place: string, signs: readonly string[]): string {
  const [shown, printed] = [signs.join(' '), signs.map(standIn).join(' ')];
  return signs.length === 1
    ? `The ${place} has ${shown}, which no typeface of the sheets has: it is printed as ${printed}.`
    : `The ${place} has ${shown}, which no typeface of the sheets has: they are printed as ${printed}.`;
}
