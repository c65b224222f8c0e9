import { writeSite } from '../../../../routing/site/file/write.ts';
import { type History, newestEdits } from '../../change/history.ts';
import type { ChangeEvent } from '../../document-state.ts';
import { checkSum } from '../../files/check-sum.ts';
import type { Writing } from './database.ts';
import { pastSumOf } from './recovery.ts';
import type { DocumentRecord, LogRecord, SnapshotRecord } from './storage-records.ts';

/** So many log entries are made before the document is written down whole again. */
export const ENTRIES_PER_SNAPSHOT = 200;
/** And so long, in milliseconds, if that is sooner. */
export const MS_PER_SNAPSHOT = 60_000;
/** The past that a snapshot carries, in steps: it is written each time, so it must not outgrow the site. */
const PAST_STEPS = 5_000;
/** The second copy of a document follows the first sooner: after so many entries, or milliseconds. */
const ENTRIES_TO_SECOND = 5;
export const MS_TO_SECOND = 5_000;

/** How far the writing down of one document has come. */
export interface Journal {
  readonly document: DocumentRecord;
  /** Entries that have not been handed to the store. */
  readonly pending: readonly LogRecord[];
  /** The snapshots in the store, the newest last, by the entries they were made after. */
  readonly snapshots: readonly number[];
  /** When the newest was made, by this machine's clock. */
  readonly snapshotAt: number;
  /** Nothing of it is in the store yet, or a write failed and what is there is not known: it must be written whole. */
  readonly unsure: boolean;
  /** There is something to write. */
  readonly stale: boolean;
  /** It was changed since the newest snapshot. */
  readonly changed: boolean;
}

/** The journal of a document that the store does not know yet: its first writing is a snapshot. */
export const newJournal = (document: Omit<DocumentRecord, 'seq'>): Journal => ({
  document: { ...document, seq: 0 },
  pending: [],
  snapshots: [],
  snapshotAt: document.at,
  unsure: true,
  stale: true,
  changed: true,
});

/** The journal of a document that was brought back from the store. A snapshot of it is due with its first change. */
export const foundJournal = (document: DocumentRecord, at: number): Journal => ({
  document,
  pending: [],
  snapshots: [],
  snapshotAt: at,
  unsure: false,
  stale: false,
  changed: false,
});

/** A journal of which it is not known what the store has: it is written whole. */
export const unsureJournal = (document: DocumentRecord, at: number): Journal => ({
  ...foundJournal(document, at),
  unsure: true,
  stale: true,
  changed: true,
});

/** The journal after a change of the document or a saving of it to a file. */
export function noted(journal: Journal, event: ChangeEvent, at: number): Journal {
  const { document, pending } = journal;
  if (event.what === 'saved') {
    const { fileName, place, stamp, sent } = event;
    const { stamp: _, sent: __, ...rest } = document;
    const saved = { fileName, place, savedSeq: document.seq, savedAt: at };
    const file = { ...(stamp && { stamp }), ...(sent && { sent }) };
    return { ...journal, document: { ...rest, at, ...saved, ...file }, stale: true };
  }
  const seq = document.seq + 1;
  const { doc } = document;
  return {
    ...journal,
    document: { ...document, seq, name: event.history.file.name, at, edits: document.edits + 1 },
    pending: [...pending, { doc, seq, what: event.what, edit: event.edit }],
    stale: true,
    changed: true,
  };
}

/** A write to be made, and the journal once it has been handed over. */
export interface Handing {
  readonly writing: Writing;
  readonly journal: Journal;
}

/**
 * Hands over what is not in the store, `history` being the document at the journal's newest entry. In haste, as when the
 * page is about to go, a snapshot that is only due is left for later.
 */
export function handed(journal: Journal, history: History, now: number, haste: boolean): Handing {
  const { document, pending, snapshots, unsure } = journal;
  const after = { ...journal, pending: [], stale: false };
  if (!unsure && (haste || !snapshotDue(journal, now))) return { writing: { document, log: pending }, journal: after };
  const older = snapshots.at(-1);
  return {
    writing: {
      document,
      // Which of the entries are there is not known; the snapshot has them all.
      log: unsure ? [] : pending,
      snapshot: snapshotOf(document, history),
      ...(older !== undefined && { keepFrom: older }),
    },
    journal: {
      ...after,
      snapshots: [...snapshots, document.seq].slice(-2),
      snapshotAt: now,
      unsure: false,
      changed: false,
    },
  };
}

/** The journal after a write that it had handed over has failed. */
export const failed = (journal: Journal, { snapshot }: Writing): Journal => ({
  ...journal,
  snapshots: snapshot ? journal.snapshots.filter((seq) => seq !== snapshot.seq) : journal.snapshots,
  unsure: true,
  stale: true,
});

/** Whether the document is to be written down whole at its next unhurried writing. */
export function snapshotDue({ document, snapshots, snapshotAt, changed }: Journal, now: number): boolean {
  const last = snapshots.at(-1);
  if (!changed) return false;
  if (last === undefined) return true;
  const second = snapshots.length < 2;
  const [entries, ms] = second ? [ENTRIES_TO_SECOND, MS_TO_SECOND] : [ENTRIES_PER_SNAPSHOT, MS_PER_SNAPSHOT];
  // A clock that was set back is no reason to wait longer.
  return document.seq - last >= entries || now - snapshotAt >= ms || now < snapshotAt;
}

function snapshotOf({ doc, seq }: DocumentRecord, history: History): SnapshotRecord {
  const text = writeSite(history.file);
  const done = newestEdits(history.done, PAST_STEPS);
  const undone = newestEdits(history.undone, PAST_STEPS);
  return { doc, seq, text, done, undone, sum: checkSum(text), pastSum: pastSumOf(done, undone) };
}
