/** So much of an item in one element. */
export interface Part {
  /** Id of the element: a conduit, charger, drop, equipment, feeder. */
  readonly of: string;
  readonly quantity: number;
}

/** What an item is called, how it is counted, and where the count comes from. */
export interface Kind {
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  readonly basis: string;
}

/** A quantity of one kind, before waste, with what it is made of. */
export interface Sum extends Kind {
  readonly net: number;
  readonly parts: readonly Part[];
  readonly within: readonly Sum[];
}

/** Sums by kind. */
export type Tally = ReadonlyMap<string, Sum>;

export const EMPTY_TALLY: Tally = new Map();

interface Growing extends Kind {
  net: number;
  readonly parts: Part[];
  readonly within: readonly Sum[];
}

const keyOf = (kind: Kind): string => `${kind.item}\n${kind.spec}`;

/** Collects quantities: `add` them one by one, `tally` when all are in. Nothing is kept of a quantity of 0. */
export function tallying(): { add(kind: Kind, of: string, quantity: number): void; tally: Tally } {
  const sums = new Map<string, Growing>();
  return {
    tally: sums,
    add(kind, of, quantity) {
      if (quantity === 0) return;
      const key = keyOf(kind);
      const sum = sums.get(key);
      if (sum === undefined) {
        sums.set(key, { ...kind, net: quantity, parts: [{ of, quantity }], within: [] });
        return;
      }
      sum.net += quantity;
      const last = sum.parts.at(-1)!;
      if (last.of === of) sum.parts[sum.parts.length - 1] = { of, quantity: last.quantity + quantity };
      else sum.parts.push({ of, quantity });
    },
  };
}

/** Tallies added up, in their order. */
export function addedUp(tallies: readonly Tally[]): Tally {
  const groups = new Map<string, Sum[]>();
  for (const tally of tallies) {
    for (const [key, sum] of tally) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [sum]);
      else group.push(sum);
    }
  }
  const total = new Map<string, Sum>();
  for (const [key, group] of groups) {
    const [first] = group;
    if (group.length === 1) total.set(key, first!);
    else total.set(key, { ...first!, net: group.reduce((sum, { net }) => sum + net, 0), parts: [], within: group });
  }
  return total;
}

/** Everything that a sum is made of, down to the element. */
export const partsOf = (sum: Sum): readonly Part[] =>
  sum.within.length === 0 ? sum.parts : [...sum.parts, ...sum.within.flatMap(partsOf)];
