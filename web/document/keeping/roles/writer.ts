import type { History } from '../../change/history.ts';
import type { ChangeEvent } from '../../document-state.ts';
import { type SiteDatabase, type Writing, write } from '../store/database.ts';
import { failed, handed, type Journal, MS_TO_SECOND, noted, snapshotDue } from '../store/journal.ts';
import type { DocumentRecord } from '../store/storage-records.ts';
import { inTime } from './in-time.ts';
import { whenQuiet } from './when-quiet.ts';

/**
 * The first change after a rest is written at once; those that follow within so many milliseconds wait for one another.
 */
export const WAIT_MS = 100;
const RETRY_MS = 5_000;
/** A whole copy that is due is written after so long a rest, in milliseconds, or at the latest so long after a change. */
const QUIET_MS = 1_000;
const LATEST_MS = 15_000;
/** A write that the store has not answered after so long counts as failed. */
const WRITING_MS = 15_000;

/** How a write went. `conflict`: another tab has written the same entries, nothing was changed. */
export type WriteOutcome =
  | { readonly kind: 'wrote'; readonly document: DocumentRecord; readonly snapshot: boolean }
  | { readonly kind: 'conflict' }
  | { readonly kind: 'failed'; readonly error: unknown };

/** Writes one document down as it changes. */
export interface Writer {
  readonly doc: string;
  /** Notes a change, to be written soon. */
  readonly note: (event: ChangeEvent) => void;
  /** Hands everything to the store at once and waits until it is there; in `haste` as little as will do. */
  readonly flush: (haste?: 'haste') => Promise<void>;
  /** The document at its newest entry. */
  readonly document: () => DocumentRecord;
  /** Whether the store may not have everything yet. */
  readonly isBehind: () => boolean;
  readonly isStopped: () => boolean;
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
  told: (wrote: WriteOutcome) => void,
): Writer {
  let state = journal;
  let history = document;
  let timer: { readonly id: ReturnType<typeof setTimeout>; readonly ms: number } | null = null;
  let resting = true;
  const underWay = new Set<Promise<void>>();
  let stopped = false;

  const wait = (ms: number): void => {
    if (timer !== null && timer.ms <= ms) return;
    stopWaiting();
    timer = { id: setTimeout(() => void flush('haste'), ms), ms };
  };
  const stopWaiting = (): void => {
    if (timer !== null) clearTimeout(timer.id);
    timer = null;
  };
  /** From now on changes wait for one another. */
  const pace = (): void => {
    resting = false;
    setTimeout(() => {
      resting = true;
      if (!stopped && state.stale) void flush('haste');
    }, WAIT_MS);
  };
  // A whole copy of a large site takes so long that a hand would feel it; the log has every change without it.
  const copy = whenQuiet(
    () => {
      if (stopped || !state.changed) return;
      if (snapshotDue(state, now())) void flush();
      else if (state.snapshots.length < 2) second = setTimeout(copy.ask, MS_TO_SECOND);
    },
    QUIET_MS,
    LATEST_MS,
  );
  let second: ReturnType<typeof setTimeout> | undefined;

  async function flush(haste?: 'haste'): Promise<void> {
    stopWaiting();
    const due = haste === undefined && snapshotDue(state, now());
    if (!stopped && (state.stale || due)) {
      const handing = handed(state, history, now(), haste === 'haste');
      state = handing.journal;
      const writing: Promise<void> = put(handing.writing, () => underWay.delete(writing));
      underWay.add(writing);
    }
    await Promise.all(underWay);
  }

  async function put(writing: Writing, ended: () => void): Promise<void> {
    const error = await inTime(WRITING_MS, () => write(database, writing)).then(
      () => null,
      (reason: unknown) => ({ reason }),
    );
    ended();
    if (stopped) return;
    if (error === null) told({ kind: 'wrote', document: writing.document, snapshot: writing.snapshot !== undefined });
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
    copy.stop();
    clearTimeout(second);
  }

  return {
    doc: journal.document.doc,
    note: (event) => {
      state = noted(state, event, now());
      history = event.history;
      copy.ask();
      if (!resting || underWay.size > 0 || state.unsure) {
        wait(WAIT_MS);
        return;
      }
      void flush('haste');
      pace();
    },
    flush,
    document: () => state.document,
    isBehind: () => state.stale || underWay.size > 0,
    isStopped: () => stopped,
    stop,
  };
}
