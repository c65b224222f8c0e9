import { kept } from '../../../routing/kept/kept.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { firstSize } from '../../prices/sizes-in.ts';
import { STICK } from '../../prices/spec.ts';
import type { CutGroup } from '../cutting/stock.ts';
import { cuttingOf } from '../rows.ts';
import { isSubmitted, leadWeeks, PACKAGES, type Package, packageOf, packOf } from './packages.ts';

/** A line of an order. Lengths in feet. */
export interface PurchaseLine {
  readonly package: Package;
  readonly item: string;
  readonly spec: string;
  /** What is put in, before waste, in `unit`. */
  readonly needed: number;
  readonly unit: string;
  /** How many of what are bought: sticks, reels, lengths, pieces. */
  readonly buy: number;
  readonly bought: 'stick' | 'reel' | 'length' | 'each' | 'ft';
  /** Feet of one stick, reel or length; null of pieces. */
  readonly each: number | null;
  /** Left over of all of them, in `unit`. */
  readonly left: number;
  /** In full packs: `3 boxes of 50 and 7`; empty where it comes in none. */
  readonly packs: string;
  readonly leadWeeks: number;
  readonly submittal: boolean;
  /** What it is for; of a reel, the longest first. */
  readonly of: readonly string[];
}

/**
 * What is bought, by package: pipe by the stick, each reel by itself with what is pulled from it, feeder conductors by their
 * lengths, all else by the piece, with full boxes and bundles told. Work is in none. What branches and feeders cut from the
 * same sticks is one line.
 */
export const purchaseOf = kept((takeoff: readonly TakeoffRow[]): readonly PurchaseLine[] => {
  const seen = new Set<CutGroup>();
  const lines = takeoff.flatMap((row): PurchaseLine[] => {
    const own = packageOf(row.item);
    if (own === null) return [];
    const group = cuttingOf(row);
    if (group === null) return [pieceLine(own, row)];
    if (seen.has(group)) return [];
    seen.add(group);
    const rows = takeoff.filter((other) => other.bought !== undefined && cuttingOf(other) === group);
    return stockLines(own, row, group, [...new Set(rows.flatMap(({ of }) => of))]);
  });
  return PACKAGES.flatMap((name) => lines.filter((line) => line.package === name));
});

const inchesOf = (spec: string): number | null => firstSize(spec, 'in');

function pieceLine(own: Package, { item, spec, quantity, bought, unit, parts, of }: TakeoffRow): PurchaseLine {
  const needed = parts.reduce((sum, part) => sum + part.quantity, 0);
  const known = {
    package: own,
    item,
    spec,
    needed,
    unit,
    of,
    leadWeeks: leadWeeks(item),
    submittal: isSubmitted(item),
  };
  if (bought !== undefined) {
    const buy = Math.round(bought.quantity / STICK);
    return { ...known, buy, bought: 'stick', each: STICK, left: bought.left, packs: '' };
  }
  const buy = Math.ceil(quantity - 1e-9);
  const left = buy - needed;
  return { ...known, buy, bought: unit === 'ft' ? 'ft' : 'each', each: null, left, packs: packWords(item, spec, buy) };
}

/** `3 boxes of 50 and 7`; empty where it comes in none, and of less than one. */
export function packWords(item: string, spec: string, count: number): string {
  const pack = packOf(item, inchesOf(spec));
  if (pack === null) return '';
  const full = Math.floor(count / pack.of);
  const rest = count - full * pack.of;
  const packs = `${full} ${full === 1 ? pack.called : `${pack.called}${pack.called.endsWith('x') ? 'es' : 's'}`} of ${pack.of}`;
  return full === 0 ? '' : rest === 0 ? packs : `${packs} and ${rest}`;
}

function stockLines(own: Package, { item, spec }: TakeoffRow, group: CutGroup, of: readonly string[]): PurchaseLine[] {
  const { stock, stocks, spare, toLength } = group;
  const base = { package: own, item, spec, unit: 'ft', leadWeeks: leadWeeks(item), submittal: isSubmitted(item) };
  const lengths = lengthLines(toLength).map(
    ({ ordered, needed, ids }): PurchaseLine => ({
      ...base,
      needed,
      buy: ids.length,
      bought: 'length',
      each: ordered,
      left: ordered * ids.length - needed,
      packs: '',
      of: [...new Set(ids)],
    }),
  );
  const sum = (pieces: readonly { readonly length: number }[]): number =>
    pieces.reduce((feet, { length }) => feet + length, 0);
  if (stock === STICK) {
    const needed = sum(stocks.flatMap(({ pieces }) => pieces));
    const buy = stocks.length + spare;
    const packs = packWords(item, spec, buy);
    return [{ ...base, needed, buy, bought: 'stick', each: stock, left: stock * buy - needed, packs, of }, ...lengths];
  }
  const reels = stocks.map(({ pieces, offcut }): PurchaseLine => {
    const ids = pieces.map((piece) => piece.of);
    return { ...base, needed: sum(pieces), buy: 1, bought: 'reel', each: stock, left: offcut, packs: '', of: ids };
  });
  const more =
    spare === 0 ? [] : [{ ...base, needed: 0, buy: spare, each: stock, left: stock * spare, packs: '', of: [] }];
  return [...reels, ...more.map((line): PurchaseLine => ({ ...line, bought: 'reel' })), ...lengths];
}

/** Pieces ordered to the same length as one line. */
function lengthLines(pieces: CutGroup['toLength']) {
  const lines = new Map<number, { readonly ordered: number; needed: number; readonly ids: string[] }>();
  for (const { of, length, ordered } of pieces) {
    const line = lines.get(ordered) ?? { ordered, needed: 0, ids: [] };
    line.needed += length;
    line.ids.push(of);
    lines.set(ordered, line);
  }
  return [...lines.values()];
}
