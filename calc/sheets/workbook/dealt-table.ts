import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Alternative } from '../../plan/compared/comparison.ts';
import { placesIn, SUBTOTALS } from '../../plan/compared/subtotals.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { ratesOf } from '../../prices/rates.ts';
import type { CostRow, CostSheet } from '../../takeoff/bid/cost.ts';
import { effortOf, partsOfRow } from '../../takeoff/bid/cost-parts.ts';
import { ON_GROUND } from '../../takeoff/high.ts';
import { COST } from './cost-table.ts';
import { hours, type LiveCell, type LiveTable, live, money, quantity } from './live.ts';
import { rateCell } from './rates-table.ts';

/** So many rows are carried; a larger bill has its sums by phase, panel and area as they were written. */
const MOST_ROWS = 50_000;

const HEAD = [
  'item',
  'spec',
  'element',
  'system',
  'phase',
  'panel',
  'area',
  'quantity',
  'from a ladder',
  'from a lift',
  'effort',
  'quantity so far',
  'of',
  'effort so far',
  'material ($)',
  'labor ($)',
  'hours',
  'cost ($)',
];
const COLUMN = { system: 'D', phase: 'E', panel: 'F', area: 'G', hours: 'Q', cost: 'R' } as const;

/** Rows of the bill as its table has them: what has no price first. */
const billed = ({ missing, rows }: CostSheet): readonly (CostSheet['missing'][number] | CostRow)[] => [
  ...missing,
  ...rows,
];

const countOf = (cost: CostSheet): number => billed(cost).reduce((sum, { taken }) => sum + taken.parts.length, 0);

/** Whether the elements of a bill are few enough to be carried in the workbook. */
export const canBeDealt = ({ cost }: Alternative): boolean => countOf(cost) <= MOST_ROWS;

/** A column of the rows dealt out: `dealt!$D$2:$D$400`. */
export const dealtColumn = ({ cost }: Alternative, name: keyof typeof COLUMN): string =>
  `dealt!$${COLUMN[name]}$2:$${COLUMN[name]}$${countOf(cost) + 1}`;

/**
 * The rows of the bill dealt out to their elements, with what belongs where: each share is what the shares so far come to
 * less those before it, so that they are the row to the cent. Material goes by quantity, hours by effort: a quantity by the
 * factors of its height. All is worked from the bill and the rates, what has no price yet among it.
 */
export function dealtTable(priced: Alternative): LiveTable {
  const { cost, site } = priced;
  const rates = ratesOf(cost.list.rates);
  const factors = { ladder: rates.height, lift: rates.lift };
  const places = SUBTOTALS.map((by) => placesIn(priced, by));
  const rows: LiveCell[][] = [HEAD];
  billed(cost).forEach((row, i) => {
    const one = row.unit === 'ft' ? fromFeet(1, site.units) : 1;
    const dealt = 'line' in row ? partsOfRow(row) : null;
    const shares = sharesOf(row.taken, factors);
    const of = { bill: i + 2, first: rows.length + 1, last: rows.length + shares.length };
    shares.forEach(({ part, effort, quantitySoFar, effortSoFar, net }, n) => {
      const { high, lift } = part.aloft ?? ON_GROUND;
      const at = of.first + n;
      const [material, labor] = [dealt?.[n]?.material ?? 0, dealt?.[n]?.labor ?? 0];
      rows.push([
        row.item,
        row.spec,
        part.of,
        ...places.map((place) => place(row, part.of)),
        quantity(part.quantity * one),
        quantity((high - lift) * one),
        quantity(lift * one),
        live(effort * one, 'figure', `MAX(0,H${at}+I${at}*(${rateCell('height')}-1)+J${at}*(${rateCell('lift')}-1))`),
        quantity(quantitySoFar * one),
        quantity(net * one),
        live(effortSoFar * one, 'figure', n === 0 ? `K${at}` : `N${at - 1}+K${at}`),
        money(material, share(of, at, 'material', 'L', `M$${at}`)),
        money(labor, share(of, at, 'labor', 'N', `N$${of.last}`)),
        hours(dealt?.[n]?.hours ?? 0, `IF(N$${of.last}>0,cost!$${COST.hours}$${of.bill}*K${at}/N$${of.last},0)`),
        money(material + labor, `O${at}+P${at}`),
      ]);
    });
  });
  return { name: 'dealt', rows };
}

interface Share {
  readonly part: TakeoffRow['parts'][number];
  readonly effort: number;
  readonly quantitySoFar: number;
  readonly effortSoFar: number;
  /** Of all parts of the row. */
  readonly net: number;
}

function sharesOf({ parts }: TakeoffRow, factors: CostRow['factors']): readonly Share[] {
  const net = parts.reduce((sum, part) => sum + part.quantity, 0);
  let [quantitySoFar, effortSoFar] = [0, 0];
  return parts.map((part): Share => {
    const effort = effortOf(part, factors);
    quantitySoFar += part.quantity;
    effortSoFar += effort;
    return { part, effort, quantitySoFar, effortSoFar, net };
  });
}

/** A row of the bill and the rows that it is dealt out to, by their lines. */
interface Dealt {
  readonly bill: number;
  readonly first: number;
  readonly last: number;
}

/** A share of a sum of the bill: what all shares so far come to, by a column that adds up, less those before. */
function share(
  { bill, first, last }: Dealt,
  at: number,
  sum: 'material' | 'labor',
  soFar: string,
  all: string,
): string {
  const whole = `cost!$${COST[sum]}$${bill}`;
  const upTo = (line: number): string =>
    line === last ? whole : `ROUND(${whole}*${soFar}${line}/MAX(${all},1E-12),2)`;
  return at === first ? upTo(at) : `${upTo(at)}-${upTo(at - 1)}`;
}
