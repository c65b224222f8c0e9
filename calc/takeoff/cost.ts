import type { TakeoffRow } from '../plan-file.ts';
import type { PriceRow } from '../prices/invented-prices.ts';
import { keyOf, type PriceList } from '../prices/price-list.ts';

/** Parts of the work that an estimator sums apart. */
export const SYSTEMS = ['feeder', 'equipment', 'branches', 'drops', 'ground'] as const;
export type System = (typeof SYSTEMS)[number];

export interface CostRow {
  readonly item: string;
  readonly spec: string;
  readonly quantity: number;
  readonly unit: string;
  readonly system: System;
  /** Dollars, to the cent. */
  readonly material: number;
  readonly hours: number;
  readonly labor: number;
  readonly cost: number;
}

export interface CostSheet {
  readonly prices: string;
  readonly rows: readonly CostRow[];
  /** Items of the takeoff that the list gives no price for: they are in no sum. */
  readonly missing: readonly {
    readonly item: string;
    readonly spec: string;
    readonly quantity: number;
    readonly unit: string;
  }[];
  readonly bySystem: Readonly<Record<System, number>>;
  /** Sum of the rows, dollars. */
  readonly cost: number;
  readonly hours: number;
  readonly overhead: number;
  readonly margin: number;
  /** Cost with overhead and margin. */
  readonly price: number;
  /** Price over the stalls that the chargers serve; null where they serve none. */
  readonly pricePerStall: number | null;
}

const SYSTEM_OF: ReadonlyMap<string, System> = new Map<string, System>([
  ...['service equipment', 'switchboard', 'panelboard', 'transformer', 'disconnect', 'inverter'].map(
    (item) => [item, 'equipment'] as const,
  ),
  ...[
    'feeder conductor',
    'feeder grounding conductor',
    'feeder bonding conductor',
    'feeder raceway',
    'feeder over 1,000 V',
    'device over 1,000 V',
    'main bonding jumper',
    'system bonding jumper',
    'electrode conductor',
    'electrode connection',
    'ground rod',
    'ground ring',
  ].map((item) => [item, 'feeder'] as const),
  ...['charging module', 'retractor', 'cord', 'pedestal'].map((item) => [item, 'drops'] as const),
  ...['trench', 'bollard', 'core drill', 'handhole'].map((item) => [item, 'ground'] as const),
]);

/** Bought with the feet of their raceway: they are counted for the order, not priced again. */
const PRICED_WITH_ANOTHER: ReadonlySet<string> = new Set(['raceway stick']);

/**
 * What a takeoff costs by a price list, the height factor on the hours of what is worked off the ground: material and labour a row, to the cent, so that the sums are the sums of what
 * is shown. A row of the list fits by item and spec; conductors fit without their colour, grounding, pilot and feeder
 * conductors as conductors of their kind; spec `*` fits every spec of its item. What fits nothing is listed as missing.
 */
export function costOf(takeoff: readonly TakeoffRow[], list: PriceList, stallsServed: number): CostSheet {
  const byKey = new Map(list.rows.map((row) => [keyOf(row.item, row.spec), row]));
  const rows: CostRow[] = [];
  const missing: { item: string; spec: string; quantity: number; unit: string }[] = [];
  for (const { item, spec, quantity, high, unit } of takeoff) {
    if (PRICED_WITH_ANOTHER.has(item)) continue;
    const price = priceOf(byKey, item, spec);
    if (!price || price.unit !== unit) missing.push({ item, spec, quantity, unit });
    else rows.push(costRow(item, spec, quantity, high, price, list));
  }
  const bySystem = Object.fromEntries(
    SYSTEMS.map((system) => [
      system,
      cents(rows.filter((row) => row.system === system).reduce((sum, row) => sum + row.cost, 0)),
    ]),
  ) as Record<System, number>;
  const cost = cents(rows.reduce((sum, row) => sum + row.cost, 0));
  const overhead = cents(cost * list.rates.overhead);
  const margin = cents((cost + overhead) * list.rates.margin);
  const price = cents(cost + overhead + margin);
  return {
    prices: list.name,
    rows,
    missing,
    bySystem,
    cost,
    hours: rows.reduce((sum, row) => sum + row.hours, 0),
    overhead,
    margin,
    price,
    pricePerStall: stallsServed > 0 ? cents(price / stallsServed) : null,
  };
}

/** The hours of what is worked off the ground are those of the list by the height factor. */
function costRow(
  item: string,
  spec: string,
  quantity: number,
  high: number,
  price: PriceRow,
  { rates }: PriceList,
): CostRow {
  const system = systemOf(item, spec);
  const hours = (quantity + high * (rates.height - 1)) * price.hours;
  const material = cents(quantity * price.material);
  const labor = cents(hours * rates.labor);
  return { item, spec, quantity, unit: price.unit, system, material, hours, labor, cost: cents(material + labor) };
}

const systemOf = (item: string, spec: string): System =>
  SYSTEM_OF.get(item) ?? (item === 'junction box' && spec.startsWith('at the drop') ? 'drops' : 'branches');

function priceOf(byKey: ReadonlyMap<string, PriceRow>, item: string, spec: string): PriceRow | undefined {
  const exact = byKey.get(keyOf(item, spec));
  if (exact) return exact;
  if (/conductor$/.test(item)) {
    // "8 AWG copper THWN-2, black" is bought as the same conductor in another colour.
    const plain = spec.replace(/,[^,]*$/, '');
    return byKey.get(keyOf(item, plain)) ?? byKey.get(keyOf('conductor', plain)) ?? byKey.get(keyOf(item, '*'));
  }
  // The raceway of a feeder is bought as any other.
  if (item === 'feeder raceway') return byKey.get(keyOf('raceway', spec)) ?? byKey.get(keyOf('raceway', '*'));
  return byKey.get(keyOf(item, '*'));
}

const cents = (dollars: number): number => Math.round(dollars * 100) / 100;
