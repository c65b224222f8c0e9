import { kept } from '../kept/kept.ts';
import { ELEMENT_LISTS } from './kinds/kinds.ts';
import { byId } from './look-up.ts';
import { MAX_ID_LENGTH } from './schema/schema-parts.ts';
import type { SiteFile } from './site.ts';

type Element = { readonly id: string };

interface Numbering {
  readonly max: number;
  /** Digits that the ids with this prefix are padded to. */
  readonly width: number;
}

/** An id's part before its closing number, and that number's digits: `S07` is `S` and `07`. */
export function splitId(id: string): { readonly prefix: string; readonly digits: string } {
  const digits = /\d{1,9}$/.exec(id)?.[0] ?? '';
  return { prefix: id.slice(0, id.length - digits.length), digits };
}

const numberingOf = kept((elements: readonly Element[]): ReadonlyMap<string, Numbering> => {
  const found = new Map<string, Numbering>();
  for (const { id } of elements) {
    const { prefix, digits } = splitId(id);
    if (digits === '') continue;
    const { max, width } = found.get(prefix) ?? { max: 0, width: 1 };
    // Only a leading zero says how wide the numbers are meant to be.
    const padded = digits.startsWith('0') ? digits.length : 1;
    found.set(prefix, { max: Math.max(max, Number(digits)), width: Math.max(width, padded) });
  }
  return found;
});

/**
 * Free ids under a prefix, in order: one past the highest number in use, padded as the ids there are (`S07` and on to
 * `S08`); two digits where none are.
 */
export function newIds(file: SiteFile, wanted: string, count: number): readonly string[] {
  // Room for the number in the longest name that a file may hold.
  const prefix = wanted.slice(0, MAX_ID_LENGTH - 10);
  const lists = ELEMENT_LISTS.map((list): readonly Element[] => file[list] ?? []).filter(
    (elements) => elements.length > 0,
  );
  const numbered = lists.flatMap((elements) => numberingOf(elements).get(prefix) ?? []);
  const width = numbered.length > 0 ? Math.max(...numbered.map((numbering) => numbering.width)) : 2;
  const first = Math.max(0, ...numbered.map(({ max }) => max)) + 1;
  const taken = (id: string): boolean => lists.some((elements) => byId(elements).has(id));
  const ids: string[] = [];
  for (let number = first; ids.length < count; number++) {
    const id = `${prefix}${String(number).padStart(width, '0')}`;
    if (!taken(id)) ids.push(id);
  }
  return ids;
}

/** The next free id under a prefix. */
export const newId = (file: SiteFile, prefix: string): string => newIds(file, prefix, 1)[0]!;
