import { kept, keptByKey } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { steady } from '../words/steady.ts';
import { fits, type LineForm, lineForm } from './line-form.ts';
import type { PriceRow } from './price-list.ts';
import { firstSize } from './sizes-in.ts';

/** How a line came to price a row. The last two are guesses: a line for any size, and a curve beyond its points. */
export type PricedHow = 'one' | 'range' | 'curve' | 'any' | 'beyond the curve';

/** The price of one unit, and the line that it stands on. */
export interface UnitPrice {
  /** The line in words: `panelboard, 400 to 600 A`; of a curve the points between which it lies. */
  readonly line: string;
  readonly how: PricedHow;
  readonly unit: PriceRow['unit'];
  /** Dollars a unit. */
  readonly material: number;
  readonly hours: number;
  /** Places in the list of the lines it is made of: one, or the two points of a curve. */
  readonly rows: readonly PriceRow[];
}

/** Whether a row so priced stands on a guess. */
export const isGuess = (how: PricedHow | 'quote'): boolean => how === 'any' || how === 'beyond the curve';

interface Line {
  readonly row: PriceRow;
  readonly form: LineForm;
}

/** Lines by item: what fits one spec by that spec, and the others in the order in which they are tried. */
const indexOf = kept((rows: readonly PriceRow[]) => {
  const one = new Map<string, PriceRow>();
  const sized = new Map<string, Line[]>();
  const any = new Map<string, PriceRow>();
  for (const row of rows) {
    const form = lineForm(row.spec);
    if (form.kind === 'one') one.set(`${row.item}\n${row.spec}`, row);
    else if (form.kind === 'any') any.set(row.item, row);
    else addTo(sized, row.item, { row, form });
  }
  return { one, sized, any };
});

/**
 * The unit price of an item by a list; null where no line of its unit fits. Tried in turn: the line of that one spec; the
 * range with the most conditions, of these the narrowest; the curve with the most conditions, straight between its points
 * on a scale of logarithms (a power of the size, as costs by capacity are scaled); the same beyond its ends; the line for
 * any spec. A conductor is also looked for without its color and as `conductor`, what is named `feeder ...` without
 * that word.
 */
export const lineFor = keptByKey(
  (item: string, spec: string, unit: string) => `${item}\n${spec}\n${unit}`,
  (rows: readonly PriceRow[], item: string, spec: string, unit: string): UnitPrice | null => {
    const { one, sized, any } = indexOf(rows);
    const names = itemNames(item, spec);
    const isOf = (row: PriceRow | undefined): row is PriceRow => row !== undefined && row.unit === unit;
    for (const [as, of] of names) {
      const row = one.get(`${as}\n${of}`);
      if (isOf(row)) return asIs(row, 'one');
    }
    let beyond: UnitPrice | null = null;
    for (const [as, of] of names) {
      const lines = (sized.get(as) ?? []).filter(({ row, form }) => row.unit === unit && fits(form, of));
      const range = lines.filter(({ form }) => form.kind === 'range').sort(closest)[0];
      if (range) return asIs(range.row, 'range');
      const curve = onCurve(lines, as, of);
      if (curve?.how === 'curve') return curve;
      beyond ??= curve;
    }
    if (beyond) return beyond;
    const general = names.map(([as]) => any.get(as)).find(isOf);
    return general ? asIs(general, 'any') : null;
  },
);

const asIs = (row: PriceRow, how: PricedHow): UnitPrice => ({
  line: `${row.item}, ${row.spec}`,
  how,
  unit: row.unit,
  material: row.material,
  hours: row.hours,
  rows: [row],
});

/** An item under its own name first, then under those by which a list may have it. */
export function itemNames(item: string, spec: string): readonly (readonly [item: string, spec: string])[] {
  const names: [string, string][] = [[item, spec]];
  if (/conductor$/.test(item)) {
    // "8 AWG copper THWN-2, black" is bought as the same conductor in another color.
    const plain = spec.replace(/,[^,]*$/, '');
    names.push([item, plain], ['conductor', plain]);
  } else if (item.startsWith('feeder ')) names.push([item.slice('feeder '.length), spec]);
  return names;
}

/** An item as a price list has it once: a conductor with insulation whatever its color and use, a feeder's raceway as any. */
export const listedAs = (item: string, spec: string): readonly [item: string, spec: string] =>
  spec.endsWith(', bare') ? [item, spec] : itemNames(item, spec).at(-1)!;

/** More conditions first, then the narrower range; the order of the list decides what is left. */
function closest(a: Line, b: Line): number {
  const conditions = ({ form }: Line): number => form.ranges.length + form.words.length;
  const width = ({ form }: Line): number => form.ranges.reduce((sum, { low, high }) => sum + high - low, 0);
  return conditions(b) - conditions(a) || width(a) - width(b);
}

/** The curve through the points that fit, of those with the most conditions. */
function onCurve(lines: readonly Line[], item: string, spec: string): UnitPrice | null {
  const points = lines
    .filter(({ form }) => form.kind === 'point' && firstSize(spec, form.size!.unit) !== null)
    .sort(closest);
  const first = points[0];
  if (!first) return null;
  const { unit } = first.form.size!;
  const asked = firstSize(spec, unit)!;
  const conditions = (line: Line): string => JSON.stringify([line.form.size!.unit, line.form.ranges, line.form.words]);
  const curve = points
    .filter((point) => conditions(point) === conditions(first))
    .sort((a, b) => a.form.size!.value - b.form.size!.value);
  const sizes = curve.map(({ form }) => form.size!.value);
  const same = curve[sizes.indexOf(asked)];
  if (same) return asIs(same.row, 'curve');
  const above = sizes.findIndex((size) => size > asked);
  const isBeyond = above <= 0;
  const high = above < 0 ? curve.length - 1 : Math.max(above, 1);
  const [a, b] = [curve[Math.max(high - 1, 0)]!, curve[high] ?? curve[0]!];
  const words = a === b ? a.row.spec : `${a.row.spec} and ${b.row.spec}`;
  return {
    line: `${item}, ${isBeyond ? 'beyond' : 'between'} ${words}`,
    how: isBeyond ? 'beyond the curve' : 'curve',
    unit: a.row.unit,
    material: along(a, b, asked, ({ material }) => material),
    hours: along(a, b, asked, ({ hours }) => hours),
    rows: a === b ? [a.row] : [a.row, b.row],
  };
}

/** Straight between two points on logarithms; on plain figures where one of them is free. */
function along(a: Line, b: Line, size: number, of: (row: PriceRow) => number): number {
  const [from, to] = [of(a.row), of(b.row)];
  const [low, high] = [a.form.size!.value, b.form.size!.value];
  if (from === to || low === high) return from;
  if (from > 0 && to > 0 && low > 0 && size > 0)
    return steady(from * (to / from) ** (Math.log(size / low) / Math.log(high / low)));
  return Math.max(0, from + ((to - from) * (size - low)) / (high - low));
}
