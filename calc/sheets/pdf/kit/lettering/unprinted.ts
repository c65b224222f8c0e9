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
  const told = new Map<string, Unprinted>();
  const look = (value: unknown, field: string, of: Of): void => {
    if (typeof value === 'string') {
      const signs = PLAIN.test(value) ? [] : signsLacking(value, has);
      if (signs.length === 0) return;
      // The same field of elements of a kind is told in one sentence.
      const key = typeof of === 'string' ? `${field}${of}` : `${field} in ${of.list}`;
      const place = told.get(key) ?? { field, of, ids: [], signs: new Set() };
      told.set(key, place);
      if (typeof of !== 'string') place.ids.push(of.id);
      for (const sign of signs) place.signs.add(sign);
    } else if (Array.isArray(value)) {
      value.forEach((one, i) => {
        if (typeof one === 'string') look(one, `line ${i + 1} of ${field}`, of);
        else look(one, field, isNamed(one) ? { id: one.id, list: field } : ` in ${field}, number ${i + 1}`);
      });
    } else if (typeof value === 'object' && value !== null && !ArrayBuffer.isView(value))
      for (const [name, one] of Object.entries(value)) {
        const isDeep = typeof one === 'object' && one !== null && !Array.isArray(one);
        look(one, name, isDeep ? ` in ${name}` : of);
      }
  };
  look(data, 'site', ' of the site');
  const places = [...told.values()];
  const more = places.length - MOST_TOLD;
  const comes = (sign: string): boolean => absent(sign.codePointAt(0)!);
  return [
    ...places.slice(0, MOST_TOLD).map((place) => sentence(place, comes)),
    ...(more > 0 ? [`So in ${more} more ${more === 1 ? 'place' : 'places'}.`] : []),
    ...(places.some(({ signs }) => [...signs].some(comes)) ? [HOW_THEY_COME] : []),
  ];
}

/** What a field is of: a part of the site, in words, or an element of a list. */
type Of = string | { readonly id: string; readonly list: string };

interface Unprinted {
  readonly field: string;
  readonly of: Of;
  readonly ids: string[];
  readonly signs: Set<string>;
}

const isNamed = (value: unknown): value is { readonly id: string } =>
  typeof value === 'object' && value !== null && typeof (value as { readonly id?: unknown }).id === 'string';

/** Signs of a text that are printed by their number, each once. */
const signsLacking = (text: string, has: (code: number) => boolean): readonly string[] =>
  [...new Set(inert(text))].filter((sign) => !has(sign.codePointAt(0)!) && printable(sign, has) === standIn(sign));

const standIn = (sign: string): string => `[${codeOf(sign)}]`;

/** Of very many signs in one place the first are shown. */
const MOST_SIGNS = 6;

/** Of very many elements the first are named. */
const MOST_NAMED = 3;

function sentence({ field, of, ids, signs: found }: Unprinted, comes: (sign: string) => boolean): string {
  const signs = [...found];
  const absent = signs.filter(comes).length;
  const others = ids.length > MOST_NAMED ? ` and ${ids.length - MOST_NAMED} more` : '';
  const place =
    typeof of === 'string'
      ? `${field}${of}`
      : `${field} of ${ids.slice(0, MOST_NAMED).join(', ')}${others} (${of.list})`;
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
