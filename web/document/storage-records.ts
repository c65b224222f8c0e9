import type { DBSchema } from 'idb';
import type { Edit } from './edit.ts';
import type { Place } from './files.ts';
import type { Turn } from './history.ts';

/**
 * Version of the database. A page that finds a higher one is older than what wrote it, and keeps its hands off.
 * 2: sites may have turned gridlines and several underlays, which an older page would take for faults.
 */
export const DATABASE_VERSION = 2;
export const DATABASE_NAME = 'overrow';

/** One site that the browser keeps. */
export interface DocumentRecord {
  readonly doc: string;
  readonly name: string;
  /** Number of the newest log entry. */
  readonly seq: number;
  /** Edits ever made, for a person to recognise it by. */
  readonly edits: number;
  /** When it was last written, by this machine's clock: only shown, never relied on for order. */
  readonly at: number;
  /** The person's own file it came from or was saved to. */
  readonly fileName?: string;
  readonly place?: Place;
  /** The log entry up to which that file has it. */
  readonly savedSeq?: number;
}

/** The whole document after the log entry `seq`. */
export interface SnapshotRecord {
  readonly doc: string;
  readonly seq: number;
  /** The site file's text. */
  readonly text: string;
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

/** One change, numbered without a gap from the document's first. An undo carries the edit that it takes back. */
export interface LogRecord {
  readonly doc: string;
  readonly seq: number;
  readonly what: Turn;
  readonly edit: Edit;
}

export interface StoredSites extends DBSchema {
  documents: { key: string; value: DocumentRecord };
  snapshots: { key: [doc: string, seq: number]; value: SnapshotRecord };
  log: { key: [doc: string, seq: number]; value: LogRecord };
}
