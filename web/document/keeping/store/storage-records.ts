import type { DBSchema } from 'idb';
import type { Edit } from '../../change/edit.ts';
import type { HistoryTurn } from '../../change/history.ts';
import type { FilePlace, Stamp } from '../../files/files.ts';

/**
 * Version of the database. A page that finds a higher one is older than what wrote it, and keeps its hands off.
 * 2: sites may have turned gridlines and several underlays, which an older page would take for faults.
 * 3: sites have an order, a bin and cards; an older page would throw the oldest sites away.
 * 4: sites have records of the field, and edits marks, which an older page would take for faults.
 */
export const DATABASE_VERSION = 4;
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
  /** Grows with every site that is taken up to be changed: the newest has the highest. Records before version 3 have none. */
  readonly order?: number;
  /** When it was put into the bin, by this machine's clock; absent where it is not there. */
  readonly binned?: number;
  /** The person's own file it came from or was saved to. */
  readonly fileName?: string;
  readonly place?: FilePlace;
  /** What that file was when it was last read or written here. */
  readonly stamp?: Stamp;
  /** The file went to the downloads, and whether it arrived there is not known. */
  readonly sent?: boolean;
  /** The log entry up to which that file has it, and when it was saved. */
  readonly savedSeq?: number;
  readonly savedAt?: number;
}

/** The whole document after the log entry `seq`. */
export interface SnapshotRecord {
  readonly doc: string;
  readonly seq: number;
  /** The site file's text. */
  readonly text: string;
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
  /** Check sums of the text, and of the past as JSON. Records before version 3 have none. */
  readonly sum?: number;
  readonly pastSum?: number;
}

/** One change, numbered without a gap from the document's first. An undo carries the edit that it takes back. */
export interface LogRecord {
  readonly doc: string;
  readonly seq: number;
  readonly what: HistoryTurn;
  readonly edit: Edit;
}

/** What a list shows of a site, as it was after the log entry `seq`. */
export interface CardRecord {
  readonly doc: string;
  readonly seq: number;
  readonly stalls: number;
  readonly drops: number;
  /** Dollars, and the name of the price list that they are by. */
  readonly price: number;
  readonly prices: string;
  /** The plan in lines, see `web/board/painting/thumbnail.ts`. */
  readonly picture: Thumbnail;
}

/** A plan as SVG paths within a box from 0, 0: what stands, what is laid, and where drops hang. */
export interface Thumbnail {
  readonly width: number;
  readonly height: number;
  readonly stalls: string;
  readonly steel: string;
  readonly raceways: string;
  readonly drops: string;
}

export interface StoredSites extends DBSchema {
  documents: { key: string; value: DocumentRecord };
  snapshots: { key: [doc: string, seq: number]; value: SnapshotRecord };
  log: { key: [doc: string, seq: number]; value: LogRecord };
  cards: { key: string; value: CardRecord };
}
