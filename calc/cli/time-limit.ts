import type { Machine } from './machine.ts';

/** Seconds that work may take, null where none are given. */
export function secondsIn(given: string | undefined): number | null | 'wrong' {
  if (given === undefined) return null;
  const seconds = Number(given);
  return seconds > 0 ? seconds : 'wrong';
}

/** Whether work may go on that ends in about so many seconds. */
export const withTime = (seconds: number | null, machine: Machine): ((share?: number) => boolean) =>
  machine.mayGoOn(seconds);
