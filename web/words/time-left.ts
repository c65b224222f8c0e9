/** Work that goes on by steps: when it was seen to begin, how far it was then, and by what it is told from other work. */
export interface WorkStretch {
  readonly what: string;
  readonly of: number;
  /** On the page's clock, ms. */
  readonly at: number;
  readonly done: number;
}

interface HowFar {
  readonly what: string;
  readonly done: number;
  readonly of: number;
}

/** Under this nothing is known of how fast it goes, ms. */
const LEAST = 2000;

/** The stretch that a piece of news belongs to: work that is gone back to is begun from where it then is. */
export const stretchOf = (last: WorkStretch | null, { what, done, of }: HowFar, at: number): WorkStretch =>
  last?.what === what && last.of === of && done >= last.done ? last : { what, of, at, done };

/** Seconds that a stretch will go on as fast as it went, at least one; null where that cannot be told yet. */
export function secondsLeft(stretch: WorkStretch, done: number, now: number): number | null {
  const went = now - stretch.at;
  const steps = done - stretch.done;
  if (steps <= 0 || went < LEAST) return null;
  return Math.max(1, Math.round(((went / steps) * (stretch.of - done)) / 1000));
}
