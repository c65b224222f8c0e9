import { addTo } from '../../../lists/grouping.ts';
import { direction } from '../../../plane/direction.ts';
import { apart } from '../../../plane/distance.ts';
import type { Point2, Stall } from '../../site.ts';
import { stripedRows } from './rows.ts';

type Bare<T> = Omit<T, 'id'>;

/** A stall about its middle. */
export function atHeading(middle: Point2, width: number, depth: number, heading: number): Bare<Stall> {
  const [ux, uy] = direction(heading);
  return { at: [middle[0] - (ux * depth) / 2, middle[1] - (uy * depth) / 2], width, depth, heading };
}

/** A direction from 0 up to 360, whole where it is as good as whole. */
export function quarter(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  const whole = Math.round(turned);
  return Math.abs(turned - whole) < 1e-6 ? whole % 360 : turned;
}

const middleOf = ({ at, depth, heading }: Bare<Stall>): Point2 => {
  const [ux, uy] = direction(heading);
  return [at[0] + (ux * depth) / 2, at[1] + (uy * depth) / 2];
};

/** Ends of stalls nearer than this, feet, are one place. */
const HEAD_TO_HEAD = 1;

/**
 * Of a rectangle one cannot see which end is the entry. Stalls that stand head to head share that end; the others are
 * taken to head away from the middle of all, where the aisle is. Of which it is sure head as they do.
 */
export function headed(
  stalls: readonly Bare<Stall>[],
  flip: boolean,
  sure: readonly boolean[],
): readonly Bare<Stall>[] {
  const middles = stalls.map(middleOf);
  const [mx, my] = meanOf(middles);
  const shared = sharedEnds(stalls);
  const rows = stripedRows(stalls, middles);
  /** 1 where a stall points as the first of its row does, -1 where it points the other way. */
  const as = stalls.map(({ heading }, i) => {
    const [[ux, uy], [vx, vy]] = [direction(heading), direction(stalls[rows.of(i)]!.heading)];
    return Math.sign(ux * vx + uy * vy);
  });
  // A row heads away from the middle as most of its stalls do: at its ends a slanted one leans over it.
  const outward = new Map<number, number>();
  for (const [i, { heading }] of stalls.entries()) {
    const [ux, uy] = direction(heading);
    const away = (middles[i]![0] - mx) * ux + (middles[i]![1] - my) * uy >= -HEAD_TO_HEAD ? 1 : -1;
    outward.set(rows.of(i), (outward.get(rows.of(i)) ?? 0) + away * as[i]!);
  }
  return stalls.map((stall, i) => {
    const ahead = shared(i, headOf(stall));
    const behind = shared(i, stall.at);
    const away = outward.get(rows.of(i))! * as[i]! >= 0;
    const keeps = sure[i] ? true : ahead === behind ? away : ahead;
    return keeps !== flip ? stall : atHeading(middles[i]!, stall.width, stall.depth, quarter(stall.heading + 180));
  });
}

/** Tells whether another stall than the i-th has an end at a place. */
function sharedEnds(stalls: readonly Bare<Stall>[]): (i: number, at: Point2) => boolean {
  const ends = new Map<string, { readonly i: number; readonly at: Point2 }[]>();
  const cell = (value: number): number => Math.floor(value / HEAD_TO_HEAD);
  stalls.forEach((stall, i) => {
    for (const at of [stall.at, headOf(stall)]) {
      const key = `${cell(at[0])} ${cell(at[1])}`;
      addTo(ends, key, { i, at });
    }
  });
  return (i, at) => {
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const end of ends.get(`${cell(at[0]) + dx} ${cell(at[1]) + dy}`) ?? [])
          if (end.i !== i && apart(end.at, at) < HEAD_TO_HEAD) return true;
    return false;
  };
}

const headOf = ({ at, depth, heading }: Bare<Stall>): Point2 => {
  const [ux, uy] = direction(heading);
  return [at[0] + ux * depth, at[1] + uy * depth];
};

export const meanOf = (points: readonly Point2[]): Point2 => [
  points.reduce((sum, [x]) => sum + x, 0) / (points.length || 1),
  points.reduce((sum, [, y]) => sum + y, 0) / (points.length || 1),
];
