import { kept } from '../../routing/kept/kept.ts';
import type { Rules } from '../../routing/site/site.ts';
import type { Bought, TakeoffRow } from '../plan-file/takeoff.ts';
import { byWords } from '../prices/kind.ts';
import { STICK } from '../prices/spec.ts';
import type { CutGroup } from './cutting/stock.ts';
import { type Stocked, stockKey, stockRow, stocksOf } from './cutting/stocking.ts';
import { type Sum, type TalliedPart, talliedParts } from './tally.ts';

/** Items in the order in which an estimator walks a job: from the supply out to the cord. */
const ORDER: ReadonlyMap<string, number> = new Map(
  [
    'service equipment',
    'switchboard',
    'panelboard',
    'transformer',
    'disconnect',
    'inverter',
    'feeder conductor',
    'feeder grounding conductor',
    'feeder bonding conductor',
    'feeder raceway',
    'termination',
    'lug',
    'feeder over 1,000 V',
    'main bonding jumper',
    'system bonding jumper',
    'electrode conductor',
    'electrode connection',
    'ground rod',
    'ground ring',
    'device over 1,000 V',
    'breaker',
    'conductor',
    'grounding conductor',
    'pilot conductor',
    'reel',
    'raceway',
    'raceway stick',
    'field bend',
    'elbow',
    'coupling',
    'connector',
    'bushing',
    'expansion fitting',
    'strap',
    'hanger',
    'trapeze',
    'threaded rod',
    'beam clamp',
    'stringer',
    'tray support',
    'conduit body',
    'pull point',
    'junction box',
    'cover',
    'bonding pigtail',
    'wire connector',
    'handhole',
    'saw cut',
    'trench',
    'bedding',
    'warning tape',
    'backfill',
    'spoil',
    'patch',
    'core drill',
    'equipment pad',
    'pedestal',
    'pedestal base',
    'bollard',
    'bollard footing',
    'wheel stop',
    'striping',
    'sign',
    'charging module',
    'retractor',
    'cord',
    'strain relief',
    'label',
    'test',
  ].map((item, place) => [item, place]),
);

const WASTE: Readonly<Record<string, 'conductor' | 'raceway'>> = {
  'feeder conductor': 'conductor',
  'feeder grounding conductor': 'conductor',
  'feeder bonding conductor': 'conductor',
  'electrode conductor': 'conductor',
  'ground ring': 'conductor',
  'feeder raceway': 'raceway',
  conductor: 'conductor',
  'grounding conductor': 'conductor',
  'pilot conductor': 'conductor',
  raceway: 'raceway',
  'threaded rod': 'raceway',
  stringer: 'raceway',
};

/** Bought in whole sticks, and not planned piece by piece. */
const WHOLE: ReadonlySet<string> = new Set(['threaded rod', 'stringer']);

const cuttings = new WeakMap<TakeoffRow, () => CutGroup>();

/** How a row of a takeoff is cut from stock, worked when it is asked for; null where it is not. */
export const cuttingOf = (row: TakeoffRow): CutGroup | null => cuttings.get(row)?.() ?? null;

/**
 * Takeoff rows of sums, in an estimator's order: waste added to what is cut from stock, and the sticks and reels that it is
 * cut from, as the cutting plan has them.
 */
export function takeoffRows(sums: readonly Sum[], rules: Rules): readonly TakeoffRow[] {
  const rows: { readonly place: string; readonly row: TakeoffRow }[] = [];
  const stocks = stocksOf(sums, rules);
  for (const sum of sums) {
    const { kind, net } = sum;
    const wasted = WASTE[kind.item];
    const waste = wasted === undefined ? 0 : rules.waste[wasted];
    const basis = wasted === undefined ? kind.basis : `${kind.basis}; plus ${percent(waste)} waste`;
    const share = (quantity: number): number => (net > 0 ? quantity / net : 0);
    const stocked = stocks.get(stockKey(kind));
    const row = rowOf(sum, kind, net * (1 + waste), [share(sum.aloft.high), share(sum.aloft.lift)], basis, stocked);
    if (stocked !== undefined) cuttings.set(row, stocked.cutting);
    rows.push({ place: placeOf(kind.item, kind.spec), row });
  }
  for (const stocked of stocks.values()) {
    if (stocked.way === 'length') continue;
    const row = stockRow(stocked);
    rows.push({ place: placeOf(row.item, row.spec), row });
  }
  return rows.sort((a, b) => (a.place < b.place ? -1 : a.place > b.place ? 1 : 0)).map(({ row }) => row);
}

/** Sorts rows: the item's place in the order, then the spec with its numbers by value. */
const placeOf = byWords((item, spec) => {
  const inWords = spec.replace(NUMBER, (_, whole = '0', top, bottom, plain) => {
    const value = plain === undefined ? Number(whole) + Number(top) / Number(bottom) : Number(plain);
    return value.toFixed(3).padStart(12, '0');
  });
  return `${String(ORDER.get(item) ?? ORDER.size).padStart(3, '0')} ${inWords}`;
});

/** `1-1/4`, `3/4`, `250`, `0.75`; an aught size such as `4/0` is none. */
const NUMBER = /(?:(\d+)-)?(\d+)\/([1-9]\d*)|(\d+(?:\.\d+)?)(?!\/)/g;

const percent = (share: number): string => `${Number((100 * share).toPrecision(6))}%`;

/** What a row is made of is gathered when it is asked for: a large lot has many parts, and few are opened. */
function rowOf(
  sum: Sum,
  { item, spec, unit }: Pick<TakeoffRow, 'item' | 'spec' | 'unit'>,
  quantity: number,
  [highShare, liftShare]: readonly [high: number, lift: number],
  basis: string,
  stocked: Stocked | undefined,
): TakeoffRow {
  let parts: readonly TalliedPart[] | undefined;
  let of: readonly string[] | undefined;
  const row: TakeoffRow = {
    item,
    spec,
    quantity,
    high: quantity * highShare,
    ...(liftShare > 0 && { lift: quantity * liftShare }),
    unit,
    basis,
    get parts() {
      parts ??= talliedParts(sum);
      return parts;
    },
    get of() {
      of ??= [...new Set(this.parts.map((part) => part.of))];
      return of;
    },
  };
  if (stocked !== undefined) {
    const { cutting, sums } = stocked;
    const own = sum.net / sums.reduce((all, { net }) => all + net, 0);
    const bought = kept((): Bought => {
      const { bought: feet, stock, left } = cutting();
      return { quantity: feet * own, stock, left: left * own };
    });
    Object.defineProperty(row, 'bought', { get: bought, enumerable: true });
  } else if (WHOLE.has(item)) {
    const feet = STICK * Math.ceil(quantity / STICK - 1e-9);
    return Object.defineProperty(row, 'bought', {
      value: { quantity: feet, stock: STICK, left: feet - sum.net } satisfies Bought,
      enumerable: true,
    });
  }
  return row;
}
