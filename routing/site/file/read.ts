import { UNITS, type Units } from '../schema/vocabulary.ts';
import type { SiteFile } from '../site.ts';
import { linesOfPaths } from './fault-lines.ts';
import { MOST_REPEATED } from './json-reading.ts';
import { readJson } from './json-text.ts';
import { MIGRATIONS, migrated } from './migrate.ts';
import { type Fault, placeOf, type SiteError, type TellFault } from './place.ts';
import { tellReferenceErrors } from './reference-errors.ts';
import { tellShapeErrors } from './shape-errors.ts';

export type ReadResult =
  | { readonly ok: true; readonly file: SiteFile }
  | { readonly ok: false; readonly errors: readonly SiteError[] };

/** Longest text that is read, in characters. */
const MAX_TEXT_CHARACTERS = 64 * 1024 * 1024;
/** So many errors are told one by one; of the rest, the last says how many. */
export const MAX_ERRORS_TOLD = MOST_REPEATED;

/**
 * Reads the text of a site file. Strict: unknown and repeated fields, wrong types, missing references, repeated ids,
 * numbers that are not finite and lengths past 100,000 ft are errors, all told at once with their places. The file
 * comes back as it stands in the text, in its units and with nothing defaulted; an older version is migrated first.
 * Never throws for what a text can hold.
 * @example
 * // By definition of the site file, version 1
 * readSite('{ "format": "overrow/site", "version": 1, "units": "ft", "name": "lot" }').ok // true
 */
export function readSite(text: string): ReadResult {
  if (text.length > MAX_TEXT_CHARACTERS) {
    const says = `the text is ${inMillions(text.length)} characters long; at most ${inMillions(MAX_TEXT_CHARACTERS)} are read`;
    return { ok: false, errors: [{ place: '', says }] };
  }
  const json = readJson(text);
  if (!json.ok) return { ok: false, errors: [{ place: '', says: json.says, line: json.line }] };
  const { value, faults, more } = checked(json.value, json.repeated, json.more);
  if (faults.length === 0) return { ok: true, file: value as SiteFile };
  const lines = linesOfPaths(
    text,
    faults.map(({ path }) => path),
  );
  return {
    ok: false,
    errors: [...faults.map((fault, i) => ({ ...errorOf(fault), line: lines[i] ?? 1 })), ...rest(more)],
  };
}

/**
 * Reads a site file that is already a value: out of storage, the clipboard or another worker.
 * @example
 * // By definition of the site file, version 1: units are ft or m
 * readSiteValue({ format: 'overrow/site', version: 1, units: 'yd', name: 'lot' }).errors.map(({ place }) => place) // ['units']
 */
export function readSiteValue(value: unknown): ReadResult {
  const { value: file, faults, more } = checked(value, [], 0);
  if (faults.length === 0) return { ok: true, file: file as SiteFile };
  return { ok: false, errors: [...faults.map(errorOf), ...rest(more)] };
}

interface Checked {
  readonly value: unknown;
  readonly faults: readonly Fault[];
  /** Faults that are not listed. */
  readonly more: number;
}

function checked(given: unknown, repeated: readonly Fault[], repeatedMore: number): Checked {
  const newest = migrated(given, MIGRATIONS);
  if (!newest.ok) return { value: given, faults: [newest.fault], more: 0 };
  const faults: Fault[] = [];
  let count = repeatedMore;
  const tell: TellFault = (path, says) => {
    count++;
    if (faults.length < MAX_ERRORS_TOLD) faults.push({ path: [...path], says: says() });
  };
  for (const { path, says } of repeated) tell(path, () => says);
  tellShapeErrors(newest.value, unitsOf(newest.value), tell);
  tellReferenceErrors(newest.value, tell);
  return { value: newest.value, faults, more: count - faults.length };
}

const errorOf = ({ path, says }: Fault): SiteError => ({ place: placeOf(path), says });

const rest = (more: number): readonly SiteError[] =>
  more === 0 ? [] : [{ place: '', says: `and ${more.toLocaleString('en-US')} more errors` }];

const unitsOf = (value: unknown): Units => {
  const units = typeof value === 'object' && value !== null ? (value as { readonly units?: unknown }).units : undefined;
  return UNITS.find((known) => known === units) ?? 'ft';
};

const inMillions = (count: number): string => `${(count / 1e6).toFixed(0)} million`;
