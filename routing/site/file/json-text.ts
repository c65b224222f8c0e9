import { fail, here, MAX_DEPTH, type Reading, skipSpace, valueAt } from './json-reading.ts';
import { lineFinder } from './line-finder.ts';
import type { Fault, Path } from './place.ts';
import { plainJson } from './plain-json.ts';

/**
 * A JSON text read: its value, and an error for each field that stands twice in an object (JSON.parse drops one), as far
 * as `MOST_REPEATED`; `more` counts the rest.
 */
export type JsonRead =
  | { readonly ok: true; readonly value: unknown; readonly repeated: readonly Fault[]; readonly more: number }
  | { readonly ok: false; readonly line: number; readonly says: string };

/**
 * Reads JSON as JSON.parse does (RFC 8259; a byte order mark before it is let pass), with the line and column of a
 * syntax error, and without losing anything: repeated fields are errors, and `spellingOf` keeps what a value cannot
 * show of its text. `visit` hears where each value inside an object or a list begins; the path is the reader's own.
 */
export function readJson(text: string, visit?: (path: Path, at: number) => void): JsonRead {
  const plain = visit ? null : plainJson(text, MAX_DEPTH);
  if (plain) return { ok: true, value: plain.value, repeated: [], more: 0 };
  const at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const lineOf = lineFinder(text);
  const reading: Reading = { text, at, failure: null, path: [], repeated: [], more: 0, lineOf, visit };
  const value = whole(reading);
  const { failure, repeated, more } = reading;
  if (failure === null) return { ok: true, value, repeated, more };
  const { line, column } = lineOf(failure.at);
  return { ok: false, line, says: `not JSON: line ${line}, column ${column}: ${failure.says}` };
}

/** The one value of a text, with nothing after it. */
function whole(reading: Reading): unknown {
  skipSpace(reading);
  if (reading.at >= reading.text.length) return fail(reading, 'the text is empty');
  const value = valueAt(reading, [], '', 0);
  skipSpace(reading);
  if (reading.failure === null && reading.at < reading.text.length)
    fail(reading, `expected the end of the text, ${here(reading)}`);
  return value;
}
