import type { CostSheet } from './cost.ts';

/** One line of the bid as it is read: each adds to what stands above it, sums apart. */
export interface BidLineRead {
  readonly name: string;
  readonly dollars: number;
  readonly isSum: boolean;
}

/** The bid from the bill down to the price; an addition of nothing is left out. */
export function bidLines(sheet: CostSheet): readonly BidLineRead[] {
  const { material, labor, cost, additions, direct, contingency, overhead, margin, bond, price } = sheet;
  const line = (name: string, dollars: number): BidLineRead => ({ name, dollars, isSum: false });
  const sum = (name: string, dollars: number): BidLineRead => ({ name, dollars, isSum: true });
  const added = [...additions.map(({ name, dollars }) => line(name, dollars))].filter(({ dollars }) => dollars !== 0);
  const onSums = [
    line('contingency', contingency),
    line('overhead', overhead),
    line('margin', margin),
    line('bonds', bond),
  ];
  return [
    line('material', material),
    line('labor', labor),
    sum('sum of rows', cost),
    ...added,
    ...(added.length > 0 ? [sum('direct cost', direct)] : []),
    ...onSums.filter(({ name, dollars }) => dollars !== 0 || name === 'overhead' || name === 'margin'),
    sum('price', price),
  ];
}
