import type { Alternative } from '../../plan/compared/comparison.ts';
import type { Cell } from '../csv.ts';
import { bidTable } from './bid-table.ts';
import { costTable } from './cost-table.ts';
import { canBeDealt, dealtTable } from './dealt-table.ts';
import type { LiveTable } from './live.ts';
import { ratesTable } from './rates-table.ts';
import { whatIfTable } from './what-if-table.ts';

/**
 * The tables of a plan as a workbook that is worked: in the place of the bill and the bid those with formulas, and beside
 * them the rates, what moves the price most, and the bill dealt out to its elements.
 */
export function workbook(
  priced: Alternative,
  tables: readonly { readonly name: string; readonly rows: readonly (readonly Cell[])[] }[],
): readonly LiveTable[] {
  const bid = bidTable(priced);
  const names = new Map((bid.names ?? []).map(({ name, at }) => [name, at]));
  const liveOnes = [
    bid,
    costTable(priced.site, priced.cost),
    ratesTable(priced.cost.list),
    whatIfTable(priced.cost, names),
    ...(canBeDealt(priced) ? [dealtTable(priced)] : []),
  ];
  const places = new Set(liveOnes.map(({ name }) => name));
  return [...liveOnes, ...tables.filter(({ name }) => !places.has(name))];
}
