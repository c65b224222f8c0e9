/** Items 0 to `count - 1` to be put in groups of at most `most`. */
export interface GroupingTask {
  readonly count: number;
  readonly most: number;
  /** What a group costs, its members ascending; Infinity where it may not be. Asked for the same group many times. */
  readonly costOf: (members: readonly number[]) => number;
  /** Groupings to do no worse than, besides the best split of the row. */
  readonly others: readonly Grouping[];
  /** False for a stretch of the row in which the order cannot be bettered, to save the search there. */
  readonly isOpen: (members: readonly number[]) => boolean;
}

export type Grouping = readonly (readonly number[])[];

/** Up to this many items every grouping is considered. */
const EXACT = 10;

/** Costs closer than this are one: the rounding of sums decides nothing. */
const SAME = 1e-6;

/** Rounds of improvement; each one only goes on where the last one found something. */
const MOST_ROUNDS = 8;

/**
 * Groups of least total cost. The least there is up to 10 items. Beyond, the best of the splits of the row into stretches
 * and of `others`, and then every run of neighbouring groups with at most 10 items between them regrouped at its least,
 * until none is bettered. An item that may not even be alone is alone in the answer.
 */
export function leastGrouping(task: GroupingTask): Grouping {
  const { count } = task;
  const all = Array.from({ length: count }, (_, i) => i);
  if (count <= EXACT) return leastOf(task, all);
  let best = leastSplit(task);
  let cost = total(task, best);
  for (const other of task.others) {
    const otherCost = total(task, other);
    if (otherCost >= cost - SAME) continue;
    best = inRow(other);
    cost = otherCost;
  }
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const better = improved(task, best);
    if (better === null) break;
    best = better;
  }
  return best;
}

const total = ({ costOf }: GroupingTask, grouping: Grouping): number =>
  grouping.reduce((sum, members) => sum + costOf(members), 0);

/** Groups with their members ascending, by their first member. */
const inRow = (grouping: Grouping): Grouping =>
  grouping.map((members) => [...members].sort((a, b) => a - b)).sort((a, b) => a[0]! - b[0]!);

/** Best split of the row into stretches: shortest path over the places to cut. */
function leastSplit({ count, most, costOf }: GroupingTask): Grouping {
  const best: number[] = [0];
  const last: (readonly number[])[] = [[]];
  for (let end = 1; end <= count; end++) {
    let least = Infinity;
    let group: readonly number[] = [end - 1];
    const members: number[] = [];
    for (let first = end - 1; first >= Math.max(0, end - most); first--) {
      members.unshift(first);
      const cost = best[first]! + alone(costOf(members), members.length);
      if (cost >= least - SAME) continue;
      least = cost;
      group = [...members];
    }
    best.push(least);
    last.push(group);
  }
  const groups: (readonly number[])[] = [];
  for (let end = count; end > 0; end -= last[end]!.length) groups.push(last[end]!);
  return groups.reverse();
}

/** One that may not be costs nothing alone, so that the rest can still be grouped. */
const alone = (cost: number, size: number): number => (size === 1 && cost === Infinity ? 0 : cost);

/** The least grouping of some items: for every set of them, the best group for its first item, and the best of the rest. */
function leastOf({ most, costOf }: GroupingTask, items: readonly number[]): Grouping {
  const full = (1 << items.length) - 1;
  const groups = groupsByFirst(items.length, most);
  const costs = groups.map((sets) =>
    sets.map((set) => {
      const members = items.filter((_, i) => set & (1 << i));
      return alone(costOf(members), members.length);
    }),
  );
  const best = new Float64Array(full + 1).fill(Infinity);
  const choice = new Int32Array(full + 1);
  best[0] = 0;
  for (let set = 1; set <= full; set++) {
    const first = 31 - Math.clz32(set & -set);
    const sets = groups[first]!;
    const own = costs[first]!;
    for (let i = 0; i < sets.length; i++) {
      const group = sets[i]!;
      if ((group & set) !== group) continue;
      const cost = own[i]! + best[set ^ group]!;
      if (cost >= best[set]! - SAME && best[set] !== Infinity) continue;
      best[set] = cost;
      choice[set] = group;
    }
  }
  const grouping: (readonly number[])[] = [];
  for (let set = full; set !== 0; set ^= choice[set]!) grouping.push(items.filter((_, i) => choice[set]! & (1 << i)));
  return grouping;
}

/** Sets of at most `most` of `count` bits by their lowest bit, the fuller ones first: of equal costs those are taken. */
function groupsByFirst(count: number, most: number): readonly (readonly number[])[] {
  const groups: number[][] = Array.from({ length: count }, () => []);
  for (let set = 1; set < 1 << count; set++) if (bits(set) <= most) groups[31 - Math.clz32(set & -set)]!.push(set);
  for (const sets of groups) sets.sort((a, b) => bits(b) - bits(a) || a - b);
  return groups;
}

function bits(set: number): number {
  let count = 0;
  for (let left = set; left !== 0; left &= left - 1) count++;
  return count;
}

/** Regroups runs of neighbouring groups; null where none is bettered. */
function improved(task: GroupingTask, grouping: Grouping): Grouping | null {
  const groups = [...grouping];
  let found = false;
  for (let at = 0; at + 1 < groups.length; at++) {
    let end = at;
    let size = 0;
    while (end < groups.length && size + groups[end]!.length <= EXACT) size += groups[end++]!.length;
    if (end - at < 2) continue;
    const window = groups.slice(at, end);
    const items = window.flat().sort((a, b) => a - b);
    if (!task.isOpen(items)) continue;
    const better = leastOf(task, items);
    if (total(task, better) >= total(task, window) - SAME) continue;
    groups.splice(at, end - at, ...inRow(better));
    found = true;
  }
  return found ? inRow(groups) : null;
}
