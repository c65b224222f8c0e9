import { readJson } from './json-text.ts';
import { migrated, UPS } from './migrate.ts';
import { errorAt, type SiteError } from './place.ts';
import { tellReferenceErrors } from './reference-errors.ts';
import { tellShapeErrors } from './shape-errors.ts';
import type { SiteFile } from './site.ts';

export type { SiteError } from './place.ts';

export type ReadResult =
  | { readonly ok: true; readonly file: SiteFile }
  | { readonly ok: false; readonly errors: readonly SiteError[] };

/** Longest text that is read, in characters. */
export const MAX_TEXT_CHARACTERS = 64 * 1024 * 1024;
/** So many errors are told one by one; of the rest, the last says how many. */
export const MAX_ERRORS_TOLD = 1000;

/**
 * Reads the text of a site file. Strict: unknown and repeated fields, wrong types, missing references, repeated ids,
 * numbers that are not finite and lengths past 100,000 ft are errors, all told at once with their places. The file
 * comes back as it stands in the text, in its units and with nothing defaulted; an older version is migrated first.
 * Never throws for what a text can hold.
 */
export function readSite(text: string): ReadResult {
  if (text.length > MAX_TEXT_CHARACTERS) {
    const says = `the text is ${inMillions(text.length)} characters long; at most ${inMillions(MAX_TEXT_CHARACTERS)} are read`;
    return { ok: false, errors: [errorAt([], says)] };
  }
  const json = readJson(text);
  return json.ok ? read(json.value, json.repeated) : { ok: false, errors: [json.error] };
}

/** Reads a site file that is already a value: out of storage, the clipboard or another worker. */
export function readSiteValue(value: unknown): ReadResult {
  return read(value, []);
}

function read(value: unknown, repeated: readonly SiteError[]): ReadResult {
  const newest = migrated(value, UPS);
  if (!newest.ok) return { ok: false, errors: [newest.error] };
  const errors: SiteError[] = [];
  let count = 0;
  const tell = (error: SiteError): void => {
    if (++count <= MAX_ERRORS_TOLD) errors.push(error);
  };
  for (const error of repeated) tell(error);
  tellShapeErrors(newest.value, unitsOf(newest.value), tell);
  tellReferenceErrors(newest.value, tell);
  if (count > MAX_ERRORS_TOLD) {
    errors.push(errorAt([], `and ${(count - MAX_ERRORS_TOLD).toLocaleString('en-US')} more errors`));
  }
  return count === 0 ? { ok: true, file: newest.value as SiteFile } : { ok: false, errors };
}

const unitsOf = (value: unknown): 'ft' | 'm' =>
  typeof value === 'object' && value !== null && (value as { readonly units?: unknown }).units === 'm' ? 'm' : 'ft';

const inMillions = (count: number): string => `${(count / 1e6).toFixed(0)} million`;
