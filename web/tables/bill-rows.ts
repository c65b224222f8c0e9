import { isGuess } from '../../calc/prices/line-for.ts';
import type { CostRow, CostSheet } from '../../calc/takeoff/bid/cost.ts';
import { type CostPart, partsOfRow } from '../../calc/takeoff/bid/cost-parts.ts';
import { SYSTEMS } from '../../calc/takeoff/systems.ts';

type Missing = CostSheet['missing'][number];

/** A row of the bill as it stands open: a part of the work, a line of it, or what a line is made of. */
export type BillRow =
  | {
      readonly kind: 'group';
      readonly key: string;
      readonly name: string;
      readonly cost: number | null;
      readonly isOpen: boolean;
    }
  | { readonly kind: 'line'; readonly key: string; readonly row: CostRow; readonly isOpen: boolean }
  | { readonly kind: 'missing'; readonly key: string; readonly row: Missing }
  | { readonly kind: 'element'; readonly key: string; readonly part: CostPart };

/**
 * The bill as it stands open: what has no price first, then what stands on a guess (again under its system, where it is
 * summed), then the systems. `open` are the keys of what is opened or, of a group that stands open from the start, closed.
 */
export function billRows({ rows, missing, bySystem }: CostSheet, turned: ReadonlySet<string>): readonly BillRow[] {
  const out: BillRow[] = [];
  const group = (key: string, name: string, cost: number | null, opensItself: boolean): boolean => {
    const isOpen = turned.has(key) !== opensItself;
    out.push({ kind: 'group', key, name, cost, isOpen });
    return isOpen;
  };
  const lines = (under: string, some: readonly CostRow[]): void => {
    for (const row of some) {
      const key = `${under} ${row.item} ${row.spec} ${row.unit}`;
      const isOpen = turned.has(key);
      out.push({ kind: 'line', key, row, isOpen });
      if (isOpen)
        for (const [i, part] of partsOfRow(row).entries())
          out.push({ kind: 'element', key: `${key} ${part.of} ${i}`, part });
    }
  };
  if (missing.length > 0 && group('missing', `no price: ${missing.length}`, null, true))
    for (const row of missing) out.push({ kind: 'missing', key: `missing ${row.item} ${row.spec} ${row.unit}`, row });
  const guessed = rows.filter(({ how }) => isGuess(how));
  const expired = rows.filter(({ isExpired }) => isExpired);
  if (expired.length > 0 && group('expired', `on a quote that ran out: ${expired.length}, summed below`, null, true))
    lines('expired', expired);
  if (guessed.length > 0 && group('guessed', `on a guess: ${guessed.length}, summed below`, null, true))
    lines('guessed', guessed);
  for (const system of SYSTEMS) {
    const own = rows.filter((row) => row.system === system);
    if (own.length > 0 && group(system, system, bySystem[system], false)) lines(system, own);
  }
  return out;
}
