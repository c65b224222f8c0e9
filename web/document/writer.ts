import { type SiteDatabase, write } from './database.ts';
import type { ChangeEvent } from './document-state.ts';
import type { History } from './history.ts';
import { failed, handed, type Journal, noted } from './journal.ts';
import type { DocumentRecord } from './storage-records.ts';

/** How long a change may wait for the next before it is written, in milliseconds. */
export const WAIT_MS = 300;
const RETRY_MS = 5_000;

/** How a write went. `conflict`: another tab has written the same entries, nothing was changed. */
export type Wrote =
  | { readonly kind: 'wrote'; readonly document: DocumentRecord }
  | { readonly kind: 'conflict' }
  | { readonly kind: 'failed'; readonly error: unknown };

/** Writes one document down as it changes. */
export interface Writer {
  readonly doc: string;
  /** Notes a change, to be written soon. */
  readonly note: (event: ChangeEvent) => void;
  /** Hands everything to the store at once and waits until it is there; in `haste` as little as will do. */
  readonly flush: (haste?: 'haste') => Promise<void>;
  /** Number of the newest entry. */
  readonly seq: () => number;
  /** Whether the store may not have everything yet. */
  readonly isBehind: () => boolean;
  /** Writes no more; what was not handed to the store is dropped. */
  readonly stop: () => void;
}

/**
 * A writer that goes on from a journal and the document at its newest entry; `told` hears of every write.
 * A write that failed is tried again, and with the next change.
 */
export function createWriter(
  database: SiteDatabase,
  journal: Journal,
  document: History,
  now: () => number,
  told: (wrote: Wrote) => void,
): Writer {
  let state = journal;
  let history = document;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let underWay = 0;
  let stopped = false;

  const wait = (ms: number): void => {
    timer ??= setTimeout(() => void flush(), ms);
  };
  const stopWaiting = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
  };

  async function flush(haste?: 'haste'): Promise<void> {
    stopWaiting();
    if (stopped || !state.stale) return;
    const { writing, journal: next } = handed(state, history, now(), haste === 'haste');
    state = next;
    underWay += 1;
    const error = await write(database, writing).then(
      () => null,
      (reason: unknown) => ({ reason }),
    );
    underWay -= 1;
    if (stopped) return;
    if (error === null) told({ kind: 'wrote', document: writing.document });
    else if (error.reason instanceof DOMException && error.reason.name === 'ConstraintError') {
      stop();
      told({ kind: 'conflict' });
    } else {
      state = failed(state, writing);
      told({ kind: 'failed', error: error.reason });
      wait(RETRY_MS);
    }
  }

  function stop(): void {
    stopped = true;
    stopWaiting();
  }

  return {
    doc: journal.document.doc,
    note: (event) => {
      state = noted(state, event, now());
      history = event.history;
      wait(WAIT_MS);
    },
    flush,
    seq: () => state.document.seq,
    isBehind: () => state.stale || underWay > 0,
    stop,
  };
}
