import type { LegCost } from '../load-flow/line-current.ts';

/** Places looked at before the search is content with what it has: some tenths of a second. */
const MOST_PLACES = 2e6;
/** Loads past which a search has no hope, and a call for each would fill the stack. */
const MOST_LOADS = 500;

/**
 * The split of any loads over three legs that costs least, by depth-first search: largest load first, emptiest leg first,
 * leaving what could not better the best even if the rest were poured, and ending where the best costs no more than
 * `bound`. `proved` says whether the search came to its end.
 * @param start a known split
 * @param bound what no split can better
 */
export function splitBySearch(
  loads: readonly number[],
  cost: LegCost,
  start: { readonly legOf: readonly number[]; readonly cost: number },
  bound: number,
): { readonly legOf: readonly number[]; readonly proved: boolean } {
  if (loads.length > MOST_LOADS) return { legOf: start.legOf, proved: false };
  const order = loads.map((_, i) => i).sort((a, b) => loads[b]! - loads[a]! || a - b);
  const left = new Array<number>(loads.length + 1).fill(0);
  for (let depth = loads.length - 1; depth >= 0; depth--) left[depth] = left[depth + 1]! + loads[order[depth]!]!;
  const sums: [number, number, number] = [0, 0, 0];
  const legOf = [...start.legOf];
  let best = { legOf: start.legOf, cost: start.cost };
  let places = 0;

  const visit = (depth: number): void => {
    if (places++ > MOST_PLACES || best.cost <= bound * (1 + 1e-12)) return;
    const least = cost(poured(sums, left[depth]!));
    if (least >= best.cost * (1 - 1e-12)) return;
    if (depth === loads.length) {
      best = { legOf: [...legOf], cost: least };
      return;
    }
    const i = order[depth]!;
    const legs = [0, 1, 2].sort((a, b) => sums[a]! - sums[b]! || a - b);
    for (const [place, leg] of legs.entries()) {
      const was = sums[leg]!;
      // Legs with the same sum are the same leg.
      if (place > 0 && sums[legs[place - 1]!] === was) continue;
      sums[leg] = was + loads[i]!;
      legOf[i] = leg;
      visit(depth + 1);
      sums[leg] = was;
    }
  };
  visit(0);
  return { legOf: best.legOf, proved: places <= MOST_PLACES };
}

/** The sums after `rest` was poured on them, the lowest first: as even as they can get. */
function poured(sums: readonly [number, number, number], rest: number): [number, number, number] {
  const [low = 0, middle = 0, high = 0] = [...sums].sort((a, b) => a - b);
  const toMiddle = Math.min(rest, middle - low);
  const toHigh = Math.min((rest - toMiddle) / 2, high - middle);
  const beyond = (rest - toMiddle - 2 * toHigh) / 3;
  const level = low + toMiddle + toHigh + beyond;
  return [level, rest < middle - low ? middle : level, high + beyond];
}
