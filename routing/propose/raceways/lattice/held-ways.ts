import { LENGTH_SLACK } from '../../../plane/space.ts';
import type { Point3 } from '../../../site/site.ts';
import { type Held, type Holding, heldAlong } from './held-line.ts';

/** Two ends of an edge of a lattice, null where it is shut, in order along a line. */
export type LineWays = readonly (readonly [a: number, b: number] | null)[];

/** An edge that something holds. */
interface HeldWay {
  readonly a: number;
  readonly b: number;
  readonly held: Held;
}

interface Wish extends Holding {
  /** Another node in the place of one. */
  readonly twin: (node: number) => number;
  /** A node at which a raceway ends or begins: both of its lines come to it. */
  readonly isEnd: (node: number) => boolean;
}

/**
 * The edges of a lattice along which something holds what hangs. At a place between held ones a raceway turns only where
 * what hangs free on both sides of the corner is no longer than supports may be apart: else its two lines pass each other.
 * @param ways of each line: those of one way first, `first` of them, then those across
 */
export function heldWays(
  ways: readonly LineWays[],
  first: number,
  points: readonly Point3[],
  wish: Wish,
): readonly HeldWay[] {
  const lines = ways.map((line) =>
    heldAlong(
      line.map((one) => one && { a: points[one[0]]!, b: points[one[1]]! }),
      wish,
    ),
  );
  /** The farthest that hangs free from a node on, along one way and the other. */
  const free = [new Map<number, number>(), new Map<number, number>()] as const;
  const all = ways.flatMap((line, k) =>
    line.flatMap((one, i) => {
      const held = lines[k]![i];
      if (!one || !held?.ok) return [];
      const [a, b] = one;
      const own = free[k < first ? 0 : 1];
      for (const [node, feet] of [
        [a, held.fromA],
        [b, held.fromB],
      ] as const)
        own.set(node, Math.max(own.get(node) ?? 0, feet));
      return [{ a, b, held, isFirst: k < first }];
    }),
  );
  const twins = new Map<number, number>();
  for (const [node, feet] of free[1]) {
    const other = free[0].get(node);
    if (other !== undefined && other + feet > wish.apart + LENGTH_SLACK && !wish.isEnd(node))
      twins.set(node, wish.twin(node));
  }
  const across = (node: number): number => twins.get(node) ?? node;
  return all.map(({ a, b, held, isFirst }) => (isFirst ? { a, b, held } : { a: across(a), b: across(b), held }));
}
