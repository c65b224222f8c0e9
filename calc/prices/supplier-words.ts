import { kept } from '../../routing/kept/kept.ts';
import { INVENTED_LIST } from './invented-list.ts';
import { lineFor } from './line-for.ts';
import { lineForm } from './line-form.ts';
import { type PriceList, type PriceRow, priceKey, type SupplierWord, type UnknownLine } from './price-list.ts';

/** Two writings of one thing: letters of either case, and however many spaces. */
const plain = (words: string): string => words.trim().replace(/\s+/g, ' ').toLowerCase();

/** What the words of a supplier, or its part numbers, mean here. */
export type Dictionary = ReadonlyMap<string, SupplierWord>;

/** The words as a dictionary; of two that are one the later holds. */
export const dictionaryOf = (words: readonly SupplierWord[]): Dictionary =>
  new Map(words.map((word) => [plain(word.theirs), word]));

/** What a line means by its part number, else by its words; undefined where neither was matched. */
export const meaningOf = (dictionary: Dictionary, { theirs, part }: Pick<UnknownLine, 'theirs' | 'part'>) =>
  (part === undefined ? undefined : dictionary.get(plain(part))) ?? dictionary.get(plain(theirs));

/** Lines of ours by item and spec in one, as who has no column for the spec writes them. */
export const ourWords = kept(
  (rows: readonly PriceRow[]): ReadonlyMap<string, Pick<PriceRow, 'item' | 'spec'>> =>
    new Map(rows.flatMap((row) => [', ', ' '].map((between) => [`${row.item}${between}${row.spec}`, row] as const))),
);

/** The unit in which an item is counted, as far as the list that is there from the start has it. */
export const unitOfItem = (item: string): PriceRow['unit'] | undefined =>
  INVENTED_LIST.rows.find((row) => row.item === item)?.unit;

/** Whether an item and spec are words of ours: a list has a line for them, or they are a range or a curve of a known item. */
export function isOurs(
  rows: readonly PriceRow[],
  { item, spec, unit }: Pick<PriceRow, 'item' | 'spec' | 'unit'>,
): boolean {
  if (lineForm(spec).kind !== 'one') return unitOfItem(item) !== undefined;
  return lineFor(rows, item, spec, unit) !== null || lineFor(INVENTED_LIST.rows, item, spec, unit) !== null;
}

/** A price line of ours from a supplier's; null where it is priced by another unit than the item is counted in. */
export function ourLine(
  rows: readonly PriceRow[],
  { unit, material, hours }: UnknownLine,
  { item, spec }: Pick<SupplierWord, 'item' | 'spec'>,
): PriceRow | null {
  const counted = unitOfItem(item) ?? unit;
  if (counted === null || (unit !== null && unit !== counted)) return null;
  const own = lineFor(rows, item, spec, counted)?.hours ?? 0;
  return { item, spec, unit: counted, material, hours: hours ?? own };
}

/**
 * A list in which an unknown line of a supplier means something, or with empty words nothing that is needed here: its price
 * is taken at once, and its words and part number are known from then on.
 */
export function withMeaning(list: PriceList, line: UnknownLine, item: string, spec: string): PriceList {
  const ours = item === '' ? null : ourLine(list.rows, line, { item, spec });
  if (item !== '' && ours === null) return list;
  const rows = ours === null ? list.rows : laid(list.rows, [ours]);
  const names = line.part === undefined ? [line.theirs] : [line.part, line.theirs];
  return {
    ...list,
    rows,
    words: [...without(list.words ?? [], names), ...names.map((theirs) => ({ theirs, item, spec }))],
    unknown: (list.unknown ?? []).filter((one) => one !== line),
  };
}

/** A list that no longer knows what a supplier's words mean: it is asked again when they are read next. */
export const withoutWord = (list: PriceList, theirs: string): PriceList => ({
  ...list,
  words: without(list.words ?? [], [theirs]),
});

function without(words: readonly SupplierWord[], names: readonly string[]): readonly SupplierWord[] {
  const gone = new Set(names.map(plain));
  return words.filter(({ theirs }) => !gone.has(plain(theirs)));
}

/** Lines in the place of those for the same, and the others after them. */
export function laid(rows: readonly PriceRow[], over: readonly PriceRow[]): readonly PriceRow[] {
  const own = new Map(over.map((row) => [priceKey(row.item, row.spec), row]));
  const before = new Set(rows.map(({ item, spec }) => priceKey(item, spec)));
  return [
    ...rows.map((row) => own.get(priceKey(row.item, row.spec)) ?? row),
    ...[...own.values()].filter(({ item, spec }) => !before.has(priceKey(item, spec))),
  ];
}
