import { readSite, readSiteValue } from '../../../../routing/site/file/read.ts';
import type { Edit } from '../../change/edit.ts';
import { afterTurn, type History, type HistoryTurn, pastFits } from '../../change/history.ts';
import { parseEdit } from '../../change/parse-edit.ts';
import { checkSum } from '../../files/check-sum.ts';
import type { LogRecord, SnapshotRecord } from './storage-records.ts';

/** What the store holds of a document, as it came out of it: nothing in it is trusted. */
export interface Stored {
  readonly snapshots: readonly unknown[];
  readonly log: readonly unknown[];
}

export type Recovered =
  | {
      readonly kind: 'whole' | 'part';
      readonly history: History;
      /** The log entry that the history stands at. */
      readonly seq: number;
      /** Entries that could not be brought back; 0 where it is whole. */
      readonly lost: number;
      /** No copy has a check sum that fits: it reads as a site, but something in it may have changed. */
      readonly doubtful: boolean;
    }
  /** Nothing in the store makes a valid site; `texts` are its snapshots as they stand. */
  | { readonly kind: 'broken'; readonly texts: readonly string[] };

/**
 * The document from its newest snapshot that is sound and the log after it, `due` being the entry it should end at. A
 * snapshot whose check sum does not fit is taken only where there is no other.
 */
export function recovered({ snapshots, log }: Stored, due: number): Recovered {
  const ordered = snapshots.flatMap(snapshotOf).sort((a, b) => b.seq - a.seq);
  const entries = log.flatMap(entryOf).sort((a, b) => a.seq - b.seq);
  const newest = Math.max(due, ...ordered.map(({ seq }) => seq), ...entries.map(({ seq }) => seq));
  for (const snapshot of [...ordered.filter(({ sound }) => sound), ...ordered.filter(({ sound }) => !sound)]) {
    const read = readSite(snapshot.text);
    if (!read.ok) continue;
    const { done, undone, sound } = snapshot;
    const whole = { file: read.file, done, undone };
    const start = pastFits(whole) ? whole : { file: read.file, done: [], undone: [] };
    const { history, seq } = replayed(start, snapshot.seq, entries);
    const lost = newest - seq;
    return { kind: lost === 0 && sound ? 'whole' : 'part', history, seq, lost, doubtful: !sound };
  }
  return { kind: 'broken', texts: ordered.map(({ text }) => text) };
}

/**
 * A history after the log entries that follow `seq` without a gap, up to the first that does not fit. Where what they
 * make is no valid site, none of them is taken.
 */
export function replayed(
  start: History,
  seq: number,
  log: readonly unknown[],
): { readonly history: History; readonly seq: number } {
  let history = start;
  let at = seq;
  for (const entry of log.flatMap(entryOf)) {
    if (entry.seq <= at) continue;
    const edit = entry.seq === at + 1 ? parseEdit(entry.edit) : null;
    const next = edit && after(history, entry.what, edit);
    if (!next) break;
    history = next;
    at = entry.seq;
  }
  return at === seq || readSiteValue(history.file).ok ? { history, seq: at } : { history: start, seq };
}

function after(history: History, turn: HistoryTurn, edit: Edit): History | null {
  try {
    return afterTurn(history, turn, edit);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

interface FoundSnapshot extends Pick<SnapshotRecord, 'seq' | 'text' | 'done' | 'undone'> {
  readonly sound: boolean;
}

function snapshotOf(value: unknown): readonly FoundSnapshot[] {
  if (!isFields(value) || typeof value.text !== 'string' || !isPlace(value.seq)) return [];
  const { seq, text, done, undone, sum, pastSum } = value;
  const sound = sum === undefined || sum === checkSum(text);
  const pastIsSound = pastSum === undefined || pastSum === pastSumOf(done, undone);
  return [{ seq, text, sound, done: pastIsSound ? edits(done) : [], undone: pastIsSound ? edits(undone) : [] }];
}

/** The check sum of a past and its undone future. */
export const pastSumOf = (done: unknown, undone: unknown): number => checkSum(JSON.stringify([done, undone]) ?? '');

/** The edits of a list; none of them where one is unsound, since the past cannot be taken back past it. */
function edits(value: unknown): readonly Edit[] {
  if (!Array.isArray(value)) return [];
  const parsed = value.map(parseEdit);
  return parsed.every((edit) => edit !== null) ? parsed : [];
}

function entryOf(value: unknown): readonly Pick<LogRecord, 'seq' | 'what' | 'edit'>[] {
  if (!isFields(value) || !isPlace(value.seq)) return [];
  const { what } = value;
  if (what !== 'do' && what !== 'undo' && what !== 'redo') return [];
  return [{ seq: value.seq, what, edit: value.edit as Edit }];
}

const isPlace = (value: unknown): value is number => typeof value === 'number' && Number.isInteger(value) && value >= 0;

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
