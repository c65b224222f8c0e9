import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';

/** A place of an element that the hand is drawn to. `z` where the element says how high it is there. */
export interface TargetPoint {
  readonly kind: 'ends' | 'middles';
  readonly at: Point2;
  readonly z: number | null;
  readonly label: string;
  readonly ref: Ref;
}

/** A straight part of a raceway or a member. */
export interface TargetLine {
  readonly from: Point3;
  readonly to: Point3;
  readonly label: string;
  readonly ref: Ref;
}

export interface Targets {
  readonly points: readonly TargetPoint[];
  readonly lines: readonly TargetLine[];
}

/** Takes what of an element the hand is drawn to. */
export interface Aims {
  readonly end: (at: readonly number[], label: string) => void;
  readonly middle: (a: readonly number[], b: readonly number[], label: string) => void;
  /** The ends, vertices, middles and straight parts of a path. */
  readonly path: (all: readonly Point3[]) => void;
}

export function aimsOf(ref: Ref, points: TargetPoint[], lines: TargetLine[]): Aims {
  const end: Aims['end'] = (at, label) => {
    points.push({ kind: 'ends', at: [at[0]!, at[1]!], z: at[2] ?? null, label, ref });
  };
  const middle: Aims['middle'] = (a, b, label) => {
    points.push({
      kind: 'middles',
      at: [(a[0]! + b[0]!) / 2, (a[1]! + b[1]!) / 2],
      z: a[2] === undefined ? null : (a[2] + b[2]!) / 2,
      label,
      ref,
    });
  };
  return {
    end,
    middle,
    path: (all) => {
      const word = ref.id;
      for (const [i, at] of all.entries()) end(at, `${i === 0 || i === all.length - 1 ? 'end' : 'vertex'} of ${word}`);
      for (let i = 1; i < all.length; i++) {
        const from = all[i - 1]!;
        const to = all[i]!;
        if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 0.01) continue;
        lines.push({ from, to, label: word, ref });
        middle(from, to, `middle of ${word}`);
      }
    },
  };
}
