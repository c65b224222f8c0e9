import type { PriceList } from '../../prices/price-list.ts';
import { ratesOf } from '../../prices/rates.ts';
import { bidLines } from '../../takeoff/bid/bid-lines.ts';
import type { CostRow } from '../../takeoff/bid/cost.ts';
import { cents, sumOf } from '../../takeoff/bid/money.ts';
import type { Alternative } from './comparison.ts';

/** What one line of the bill adds or deducts; a deduct is less than 0. */
export interface ChangeLine {
  /** By which the drawing names it, from 1. */
  readonly number: number;
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  readonly material: number;
  readonly hours: number;
  readonly labor: number;
  /** Material and labor. */
  readonly extension: number;
  /** Ids of the elements that have more or less of it. */
  readonly of: readonly string[];
}

/** What a revision adds and deducts, line by line, and what is laid on them: together the difference of the two prices. */
export interface ChangeOrder {
  readonly lines: readonly ChangeLine[];
  readonly adds: number;
  readonly deducts: number;
  /** Differences of what is laid on the bill: tax, freight, overhead and their like. */
  readonly markups: readonly { readonly name: string; readonly dollars: number }[];
  /** For material that goes back, where it was asked for: it is no part of either price. */
  readonly restocking: number | null;
  /** Price after less price before, and restocking. */
  readonly total: number;
}

/** Less than this is no change of a quantity: a rounding of sums. */
const LEAST = 1e-6;

/**
 * The change order from one version to another, priced by one list. Without restocking its total is the price of the later
 * less that of the earlier, to the cent; with it, material that is deducted costs the list's share of it besides.
 */
export function changeOrder(
  before: Alternative,
  after: Alternative,
  asked: { readonly restocking: PriceList } | undefined = undefined,
): ChangeOrder {
  const lines = changedLines(before.cost.rows, after.cost.rows);
  const side = (sign: 1 | -1): number =>
    sumOf(lines.flatMap(({ extension }) => (extension * sign > 0 ? [extension] : [])));
  const returned = sumOf(lines.flatMap(({ material }) => (material < 0 ? [-material] : [])));
  const restocking = asked ? cents(returned * ratesOf(asked.restocking.rates).restocking) : null;
  return {
    lines,
    adds: side(1),
    deducts: side(-1),
    markups: changedMarkups(before, after),
    restocking,
    total: sumOf([after.cost.price, -before.cost.price, restocking ?? 0]),
  };
}

const keyOf = ({ item, spec, unit }: CostRow): string => JSON.stringify([item, spec, unit]);

function changedLines(before: readonly CostRow[], after: readonly CostRow[]): readonly ChangeLine[] {
  const [old, now] = [before, after].map((rows) => new Map(rows.map((row) => [keyOf(row), row]))) as [
    Map<string, CostRow>,
    Map<string, CostRow>,
  ];
  const keys = [...now.keys(), ...[...old.keys()].filter((key) => !now.has(key))];
  const lines = keys.flatMap((key): Omit<ChangeLine, 'number'>[] => {
    const [was, is] = [old.get(key), now.get(key)];
    const { item, spec, unit } = (is ?? was)!;
    const by = (of: (row: CostRow) => number): number => (is ? of(is) : 0) - (was ? of(was) : 0);
    const quantity = by((row) => row.quantity);
    const material = cents(by((row) => row.material));
    const labor = cents(by((row) => row.labor));
    if (Math.abs(quantity) <= LEAST && material === 0 && labor === 0) return [];
    return [
      {
        item,
        spec,
        unit,
        before: was?.quantity ?? 0,
        after: is?.quantity ?? 0,
        material,
        hours: by((row) => row.hours),
        labor,
        extension: sumOf([material, labor]),
        of: changedElements(was, is),
      },
    ];
  });
  return lines.map((line, i) => ({ number: i + 1, ...line }));
}

/** Ids that have another quantity of a row than before. */
function changedElements(was: CostRow | undefined, is: CostRow | undefined): readonly string[] {
  const more = new Map<string, number>();
  const count = (row: CostRow | undefined, sign: 1 | -1): void => {
    for (const { of, quantity } of row?.taken.parts ?? []) more.set(of, (more.get(of) ?? 0) + sign * quantity);
  };
  count(is, 1);
  count(was, -1);
  return [...more].flatMap(([id, quantity]) => (Math.abs(quantity) > LEAST ? [id] : []));
}

function changedMarkups(before: Alternative, after: Alternative): ChangeOrder['markups'] {
  const laidOn = ({ cost }: Alternative): ReadonlyMap<string, number> =>
    new Map(
      bidLines(cost)
        .filter(({ name, isSum }) => !isSum && name !== 'material' && name !== 'labor')
        .map(({ name, dollars }) => [name, dollars]),
    );
  const [was, is] = [laidOn(before), laidOn(after)];
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((name) => {
    const dollars = sumOf([is.get(name) ?? 0, -(was.get(name) ?? 0)]);
    return dollars === 0 ? [] : [{ name, dollars }];
  });
}
