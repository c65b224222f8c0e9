import type { SharedRoutes } from './anneal.ts';
import type { Laid } from './laid.ts';

/** The cheapest few of the routes that a search meets, no two of which lie on the same edges. */
export interface BestFew {
  readonly met: (laid: Laid) => void;
  /** The cheapest first. */
  readonly found: () => readonly SharedRoutes[];
}

export function bestFew(most: number): BestFew {
  const few: (SharedRoutes & { readonly mark: number })[] = [];
  const met = (laid: Laid): void => {
    const cost = laid.cost();
    if (most < 1 || (few.length === most && cost >= (few.at(-1)?.cost as number))) return;
    const mark = laid.mark();
    const alike = few.findIndex((one) => one.mark === mark);
    if (alike >= 0 && (few[alike]?.cost as number) <= cost) return;
    if (alike >= 0) few.splice(alike, 1);
    const at = few.findIndex((one) => one.cost > cost);
    few.splice(at < 0 ? few.length : at, 0, { cost, mark, paths: [...laid.paths] });
    if (few.length > most) few.pop();
  };
  return { met, found: () => few };
}
