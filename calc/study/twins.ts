import type { SiteFile } from '../../routing/site/site.ts';
import { FIGURE_NAMES, type WayFigures } from './figures.ts';

type Drawn = { readonly file: SiteFile; readonly figures: WayFigures };

/** What makes a layout, by the lists of a file; other lists are of the lot, and the same in all ways of it. */
const LISTS = ['equipment', 'feeders', 'loads', 'raceways', 'pullpoints', 'drops', 'chargers'] as const;

/**
 * The first of some ways that comes to the very same as another: every figure, the price to the cent among them, and all
 * that is drawn, whatever it is called; null where none does. Which of several boards load management is set at is no
 * layout: what it gives cars and leaves of the supply are figures.
 */
export function twinOf<W extends Drawn>(ways: readonly W[], { file, figures }: Drawn): W | null {
  const alike = ways.filter((way) => FIGURE_NAMES.every((name) => isSame(way.figures[name], figures[name])));
  if (alike.length === 0) return null;
  const layout = layoutOf(file);
  return alike.find((way) => layoutOf(way.file) === layout) ?? null;
}

const isSame = (a: number | null, b: number | null): boolean =>
  a === b || (a !== null && b !== null && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)));

/** What is drawn, without the names that it goes by: elements are called by their places in their lists. */
function layoutOf(file: SiteFile): string {
  const called = new Map<string, string>();
  for (const list of LISTS) for (const [i, { id }] of (file[list] ?? []).entries()) called.set(id, `${list} ${i}`);
  return JSON.stringify([LISTS.map((list) => file[list] ?? []), file.rules ?? {}], (key, value: unknown) => {
    if (key === 'managedAmps') return undefined;
    if (typeof value === 'string') return called.get(value) ?? value;
    if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
    // The order in which fields were written says nothing.
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
