import type { LegCost } from '../load-flow/line-current.ts';

/** Cells past which the table would be large: 16 million, 32 MB. */
const MOST_CELLS = 1.6e7;
/** Steps past which filling it would take over a second. */
const MOST_STEPS = 4e8;

/**
 * The split of whole-numbered loads over three legs that costs least, by a table of every pair of sums of legs 0 and 1
 * that can be reached; each cell holds the number of the load that first reached it. Leg 2 has the rest. Null where the
 * table would be too large, or no split costs what is known. Dynamic programming over reachable sums: exact.
 * @param reached what a known split costs, which bounds the table
 */
export function splitByTable(loads: readonly number[], cost: LegCost, reached: number): number[] | null {
  const total = loads.reduce((sum, load) => sum + load, 0);
  const most = largestLeg(total, cost, reached);
  const side = most + 1;
  if (side * side > MOST_CELLS || side * side * loads.length > MOST_STEPS || loads.length > 65_000) return null;
  const first = fill(loads, most);
  let least = Infinity;
  let at = -1;
  for (let x = 0; x <= most; x++) {
    for (let y = 0; y <= x; y++) {
      const z = total - x - y;
      if (z > y || z < 0 || first[x * side + y] === 0) continue;
      const now = cost([x, y, z]);
      if (now < least) [least, at] = [now, x * side + y];
    }
  }
  return at < 0 ? null : walkBack(loads, first, side, at);
}

/** Greatest sum of a leg in any split that costs no more than `reached`. */
function largestLeg(total: number, cost: LegCost, reached: number): number {
  let low = Math.floor(total / 3);
  let high = total;
  while (low < high) {
    const leg = Math.ceil((low + high) / 2);
    const rest = (total - leg) / 2;
    if (cost([leg, rest, rest]) <= reached * (1 + 1e-9)) low = leg;
    else high = leg - 1;
  }
  return low;
}

/** 0 for sums that no loads make; 1 for nothing laid yet; else 2 + the load with which they can first be made. */
function fill(loads: readonly number[], most: number): Uint16Array {
  const side = most + 1;
  const first = new Uint16Array(side * side);
  first[0] = 1;
  let sum = 0;
  loads.forEach((load, i) => {
    sum = Math.min(most, sum + load);
    // From the top down, so that no load is laid twice.
    for (let x = sum; x >= 0; x--) {
      for (let y = sum; y >= 0; y--) {
        const cell = x * side + y;
        if (first[cell] !== 0) continue;
        if ((x >= load && first[cell - load * side] !== 0) || (y >= load && first[cell - load] !== 0))
          first[cell] = i + 2;
      }
    }
  });
  return first;
}

function walkBack(loads: readonly number[], first: Uint16Array, side: number, from: number): number[] {
  const legOf = loads.map(() => 2);
  let cell = from;
  while (first[cell]! > 1) {
    const i = first[cell]! - 2;
    const load = loads[i]!;
    const over = cell - load * side;
    // It came from a cell that an earlier load had reached, not from one that this load reached as well.
    const fromLeg0 = over >= 0 && first[over] !== 0 && first[over]! < first[cell]!;
    legOf[i] = fromLeg0 ? 0 : 1;
    cell = fromLeg0 ? over : cell - load;
  }
  return legOf;
}
