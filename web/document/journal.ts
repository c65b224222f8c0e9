import { writeSite } from '../../routing/site/write.ts';
import type { Writing } from './database.ts';
import type { ChangeEvent } from './document-state.ts';
import { type History, newestEdits } from './history.ts';
import type { DocumentRecord, LogRecord, SnapshotRecord } from './storage-records.ts';

/** So many log entries are made before the document is written down whole again. */
export const ENTRIES_PER_SNAPSHOT = 200;
/** And so long, in milliseconds, if that is sooner. */
export const MS_PER_SNAPSHOT = 60_000;
/** The past that a snapshot carries, in steps: it is written each time, so it must not outgrow the site. */
const PAST_STEPS = 5_000;

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
}

/** The journal of a document that the store does not know yet: its first writing is a snapshot. */
export const newJournal = (document: Omit<DocumentRecord, 'seq'>): Journal => ({
  document: { ...document, seq: 0 },
  pending: [],
  snapshots: [],
  snapshotAt: document.at,
  unsure: true,
  stale: true,
});

/** The journal of a document that was brought back from the store. A snapshot of it is due with its first change. */
export const foundJournal = (document: DocumentRecord, at: number): Journal => ({
  document,
  pending: [],
  snapshots: [],
  snapshotAt: at,
  unsure: false,
  stale: false,
});

/** The journal after a change of the document or a saving of it to a file. */
export function noted(journal: Journal, event: ChangeEvent, at: number): Journal {
  const { document, pending } = journal;
  if (event.what === 'saved') {
    const { fileName, place } = event;
    return { ...journal, document: { ...document, at, fileName, place, savedSeq: document.seq }, stale: true };
  }
  const seq = document.seq + 1;
  const { doc } = document;
  return {
    ...journal,
    document: { ...document, seq, name: event.history.file.name, at, edits: document.edits + 1 },
    pending: [...pending, { doc, seq, what: event.what, edit: event.edit }],
    stale: true,
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
    journal: { ...after, snapshots: [...snapshots, document.seq].slice(-2), snapshotAt: now, unsure: false },
  };
}

/** The journal after a write that it had handed over has failed. */
export const failed = (journal: Journal, { snapshot }: Writing): Journal => ({
  ...journal,
  snapshots: snapshot ? journal.snapshots.filter((seq) => seq !== snapshot.seq) : journal.snapshots,
  unsure: true,
  stale: true,
});

function snapshotDue({ document, snapshots, snapshotAt }: Journal, now: number): boolean {
  const last = snapshots.at(-1);
  if (last === undefined) return true;
  if (document.seq === last) return false;
  // A clock that was set back is no reason to wait longer.
  return document.seq - last >= ENTRIES_PER_SNAPSHOT || now - snapshotAt >= MS_PER_SNAPSHOT || now < snapshotAt;
}

function snapshotOf({ doc, seq }: DocumentRecord, { file, done, undone }: History): SnapshotRecord {
  return {
    doc,
    seq,
    text: writeSite(file),
    done: newestEdits(done, PAST_STEPS),
    undone: newestEdits(undone, PAST_STEPS),
  };
}
