import { inert } from './inert.ts';
import { codeOf, printable } from './printable.ts';

/** Places that are named one by one; of more only how many. */
const MOST_TOLD = 8;

const PLAIN = /^[\x20-\x7e]*$/;

/**
 * What cannot be printed as it was written, a sentence for each place in a site: the field, the element that it is of, and
 * the signs that no typeface has, with how they are printed.
 * @param data a site, or what has its names
 * @param has whether a typeface that can be had has a sign
 * @param absent whether a typeface has it that cannot be had now
 */
export function unprintedWords(
  data: object,
  has: (code: number) => boolean,
  absent: (code: number) => boolean = () => false,
): readonly string[] {
  const told: string[] = [];
  let more = 0;
  let isAbsent = false;
  const look = (value: unknown, field: string, of: string): void => {
    if (typeof value === 'string') {
      const signs = PLAIN.test(value) ? [] : signsLacking(value, has);
      if (signs.length === 0) return;
      const come = signs.filter((sign) => absent(sign.codePointAt(0)!));
      isAbsent ||= come.length > 0;
      if (told.length < MOST_TOLD) told.push(sentence(`${field}${of}`, signs, come.length));
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
  return [...told, ...(more === 0 ? [] : [`So in ${more} more places.`]), ...(isAbsent ? [HOW_THEY_COME] : [])];
}

const isNamed = (value: unknown): value is { readonly id: string } =>
  typeof value === 'object' && value !== null && typeof (value as { readonly id?: unknown }).id === 'string';

/** Signs of a text that are printed by their number, each once. */
const signsLacking = (text: string, has: (code: number) => boolean): readonly string[] =>
  [...new Set(inert(text))].filter((sign) => !has(sign.codePointAt(0)!) && printable(sign, has) === standIn(sign));

const standIn = (sign: string): string => `[${codeOf(sign)}]`;

/** Of very many signs in one place the first are shown. */
const MOST_SIGNS = 6;

function sentence(place: string, signs: readonly string[], absent: number): string {
  const first = signs.slice(0, MOST_SIGNS);
  const rest = signs.length > MOST_SIGNS ? ` and ${signs.length - MOST_SIGNS} more` : '';
  const [shown, printed] = [`${first.join(' ')}${rest}`, `${first.map(standIn).join(' ')}${rest}`];
  const why =
    absent === 0
      ? 'which no typeface of the sheets has'
      : absent === signs.length
        ? 'whose typeface has not come yet'
        : 'of which some have no typeface and the others’ has not come yet';
  return `The ${place} has ${shown}, ${why}: ${signs.length === 1 ? 'it is' : 'they are'} printed as ${printed}.`;
}

const HOW_THEY_COME =
  'Typefaces of such signs are fetched from where this page came from when a site first needs them, and kept: write the sheets again once there is a network.';
