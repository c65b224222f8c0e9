import { shuffled } from './steady-numbers.ts';

/** Circuits to take out and lay anew, and an edge that they may not take (-1: none). */
export interface Ruin {
  readonly out: readonly number[];
  readonly banned: number;
}

/** Of all, such a part takes out far more, and so many at most. */
const MANY = 0.1;
const MOST_OF_MANY = 40;

/** At most so many circuits are taken out at once, but for those of one edge: twice as many. */
const MOST = 12;

/**
 * Some circuits that lie near one another: neighbors of one by their ends, those that share an edge (which is then
 * banned, so that a trunk can move as a whole), or any. One at least, whatever the paths: two circuits or more are asked for.
 */
export function ruin(
  paths: readonly (readonly number[])[],
  neighbors: readonly (readonly number[])[],
  random: () => number,
): Ruin {
  const count = paths.length;
  const most = random() < MANY ? Math.min(MOST_OF_MANY, Math.ceil(count * 0.7)) : MOST;
  const some = 2 + Math.floor(random() * Math.min(most - 1, count - 1));
  const middle = Math.floor(random() * count);
  const kind = random();
  if (kind < 0.45)
    return { out: shuffled((neighbors[middle] as readonly number[]).slice(0, some), random), banned: -1 };
  const path = paths[middle] as readonly number[];
  if (kind < 0.9 && path.length > 0) {
    // Rather near the end of the path than near the root, where many share it.
    const part = random();
    const edge = path[path.length - 1 - Math.floor(part * Math.sqrt(part) * path.length)] as number;
    const on: number[] = [];
    paths.forEach((other, k) => {
      if (other.includes(edge)) on.push(k);
    });
    if (on.length <= 2 * MOST) return { out: shuffled(on, random), banned: edge };
    return { out: shuffled(on, random).slice(0, MOST), banned: random() < 0.5 ? edge : -1 };
  }
  return {
    out: shuffled(
      paths.map((_, k) => k),
      random,
    ).slice(0, some),
    banned: -1,
  };
}
