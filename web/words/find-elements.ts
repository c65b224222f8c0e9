import type { Kind } from '../../routing/site/kinds/kind.ts';
import { ELEMENT_LISTS, KINDS } from '../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { elementsOf, type ListName } from '../document/change/element-lists.ts';
import { wordFor } from '../document/edits/in-words.ts';

/** An element whose name or label answers what was asked for. */
export interface Found {
  readonly list: ListName;
  readonly id: string;
  /** What else it goes by: the label of a stall, or its name in words; null where nothing. */
  readonly also: string | null;
}

/** What is looked for most comes first among names that answer equally well. */
const FIRST: readonly ListName[] = ['drops', 'chargers', 'stalls', 'equipment', 'raceways', 'pullpoints', 'feeders'];
const LISTS: readonly ListName[] = [...FIRST, ...ELEMENT_LISTS.filter((list) => !FIRST.includes(list))];

/** How well a name answers: it is what was asked, its number is, it begins so, it holds it; null where it does not. */
function answers(name: string, asked: string): number | null {
  if (name === asked) return 0;
  if (/^\d+$/.test(asked) && Number(/\d+$/.exec(name)?.[0] ?? Number.NaN) === Number(asked)) return 1;
  if (name.startsWith(asked)) return 2;
  return name.includes(asked) ? 3 : null;
}

/** What was asked for, and of which kind: "stall 12" asks for stalls alone. */
function askedFor(text: string): { readonly asked: string; readonly of: ListName | null } {
  const asked = text.trim().toLowerCase().replace(/\s+/g, ' ');
  for (const list of LISTS) {
    const word = wordFor(list);
    if (asked.startsWith(`${word} `)) return { asked: asked.slice(word.length + 1), of: list };
  }
  return { asked, of: null };
}

const NO_CIRCUITS: ReadonlyMap<string, string> = new Map();

/**
 * The elements whose names or labels answer a text, best first, however its letters are written; and how many there are
 * beyond the `most` that are given. `circuits` are the numbers on the door card, by what they serve.
 */
export function findElements(
  file: SiteFile,
  text: string,
  most: number,
  circuits: ReadonlyMap<string, string> = NO_CIRCUITS,
): { readonly found: readonly Found[]; readonly more: number } {
  const { asked, of } = askedFor(text);
  if (asked === '') return { found: [], more: 0 };
  const ranks: Found[][] = [[], [], [], []];
  for (const list of of ? [of] : LISTS) {
    const { alsoCalled }: Pick<Kind<never>, 'alsoCalled'> = KINDS[list];
    for (const element of elementsOf(file, list)) {
      const called = alsoCalled?.(element as never) ?? circuits.get(element.id);
      const also = called !== undefined && called !== element.id ? called : null;
      const rank = [element.id, called]
        .map((each) => (each === undefined ? null : answers(each.toLowerCase(), asked)))
        .reduce((best, each) => (each !== null && (best === null || each < best) ? each : best), null);
      if (rank !== null) ranks[rank]!.push({ list, id: element.id, also });
    }
  }
  const all = ranks.flat();
  return { found: all.slice(0, most), more: Math.max(0, all.length - most) };
}
