import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { failureWords } from '../words/failure-words.ts';

/** Work that takes a while, away from the page: what it is, how far it is, and how it ended. */
export interface Work {
  readonly id: number;
  readonly what: string;
  readonly state: 'waiting' | 'doing' | 'done' | 'failed';
  /** What is being done of it now; after its end, what came of it. */
  readonly says: string;
  readonly done: number;
  readonly of: number;
  /** What the work did not become where it failed, as a word: `written`. */
  readonly wasNot: string;
}

/** Tells how far a work is. */
export type TellWork = (says: string, done: number, of: number) => void;

/** Does the work until it is done or the signal stops it; resolves with what came of it. */
type Doing = (signal: AbortSignal, tell: TellWork) => Promise<string>;

/** So many run side by side, and so many may wait: each takes memory and a core. */
const AT_ONCE = 2;
const MOST_WAITING = 12;

const works = new Map<number, { readonly doing: Doing; readonly stop: AbortController }>();
let last = 0;

export const workStore = createStore<{ readonly works: readonly Work[] }>(() => ({ works: [] }));

export const useWorks = <T>(choose: (works: readonly Work[]) => T): T =>
  useStore(workStore, (state) => choose(state.works));

/**
 * Begins a work, or has it wait until there is room. The same work is not begun twice over. False where it was not taken
 * on, for that reason or because as many wait as may.
 * @param wasNot what is said that it was not, where it fails
 */
export function beginWork(what: string, doing: Doing, wasNot = 'written'): boolean {
  const { works: now } = workStore.getState();
  const open = now.filter(({ state }) => state === 'waiting' || state === 'doing');
  if (open.some((work) => work.what === what) || open.length >= AT_ONCE + MOST_WAITING) return false;
  last += 1;
  works.set(last, { doing, stop: new AbortController() });
  const work: Work = { id: last, what, state: 'waiting', says: '', done: 0, of: 1, wasNot };
  // What was said of the same work before is put away.
  workStore.setState({ works: [...now.filter((one) => one.what !== what), work] });
  goOn();
  return true;
}

/** Stops a work, or puts away what is said of one that has ended. */
export function endWork(id: number): void {
  works.get(id)?.stop.abort();
  works.delete(id);
  workStore.setState({ works: workStore.getState().works.filter((work) => work.id !== id) });
  goOn();
}

function goOn(): void {
  const { works: now } = workStore.getState();
  const room = AT_ONCE - now.filter(({ state }) => state === 'doing').length;
  for (const { id } of now.filter(({ state }) => state === 'waiting').slice(0, Math.max(0, room))) void run(id);
}

async function run(id: number): Promise<void> {
  const work = works.get(id);
  if (!work) return;
  change(id, { state: 'doing' });
  try {
    const says = await work.doing(work.stop.signal, (now, done, of) => change(id, { says: now, done, of }));
    change(id, { state: 'done', says });
  } catch (error) {
    change(id, { state: 'failed', says: failureWords(error) });
  }
  works.delete(id);
  goOn();
}

/** Work that is no longer on the list was stopped: nothing is said of it. */
function change(id: number, how: Partial<Work>): void {
  workStore.setState({
    works: workStore.getState().works.map((work) => (work.id === id ? { ...work, ...how } : work)),
  });
}
