import type { Health } from '../document/keeping/site-keeping.ts';

/** How much of its room the browser's store uses, and what is left. */
export function roomWords(health: Health | null): string {
  if (!health?.room) return 'this browser does not say';
  const { used, of } = health.room;
  return `${byteWords(used)} used, ${byteWords(Math.max(0, of - used))} left`;
}

export function byteWords(count: number): string {
  const [size, unit] = count >= 1e9 ? [count / 1e9, 'GB'] : count >= 1e6 ? [count / 1e6, 'MB'] : [count / 1e3, 'kB'];
  return `${size >= 100 ? Math.round(size) : Number(size.toPrecision(2))} ${unit}`;
}

/** What the browser answered when it was asked to keep its store. */
export function persistWords(health: Health | null): string {
  if (health?.persisted === true) return 'no: the browser has agreed to keep it';
  if (health?.persisted === false) return 'yes, when the browser runs short of room: save to files as well';
  return 'the browser is asked with the first change';
}
