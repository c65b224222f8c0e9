import { readJson } from '../file/json-text.ts';
import { didYouMean } from '../file/nearest-word.ts';
import { placeOf, type SiteError } from '../file/place.ts';
import { readSiteValue } from '../file/read.ts';
import { tidy } from '../file/tidy.ts';
import { lengthRewriter } from '../numbers/convert-lengths.ts';
import { fromFeet, toFeet } from '../numbers/units.ts';
import { markSchema } from '../schema/mark-schema.ts';
import type { Units } from '../schema/vocabulary.ts';
import type { Mark, SiteFile } from '../site.ts';
import { mergeMarks } from './merge.ts';

/** What somebody wrote down of a site, as it travels apart from the drawing: `NAME.records.json`. */
export interface RecordsFile {
  readonly format: 'overrow/records';
  readonly version: 1;
  /** The name of the site. */
  readonly site: string;
  /** Of every length in the marks. */
  readonly units: Units;
  readonly records: readonly Mark[];
}

const FIELDS = ['format', 'version', 'site', 'units', 'records'] as const;

/** Longest text that is read, in characters. */
const MAX_TEXT_CHARACTERS = 32 * 1024 * 1024;

export type RecordsRead =
  | { readonly ok: true; readonly file: RecordsFile }
  | { readonly ok: false; readonly errors: readonly SiteError[] };

/** The records of a site, in their logical time. */
export const recordsOf = ({ name, units, records = [] }: SiteFile): RecordsFile => ({
  format: 'overrow/records',
  version: 1,
  site: name,
  units,
  records: mergeMarks(records, []),
});

/** The text of a records file, a mark a line, so that versions of it can be compared. */
export function writeRecords({ records, ...head }: RecordsFile): string {
  const lines = Object.entries(head).map(([name, value]) => `  ${JSON.stringify(name)}: ${JSON.stringify(value)},`);
  const marks = records.map((mark) => `    ${JSON.stringify(mark)}`).join(',\n');
  return ['{', ...lines, marks ? `  "records": [\n${marks}\n  ]` : '  "records": []', '}', ''].join('\n');
}

/**
 * Reads records out of the text of a records file, or out of that of a site file, which has them too. Strict, as the
 * reading of site files is: every fault is told with its place.
 */
export function readRecords(text: string): RecordsRead {
  if (text.length > MAX_TEXT_CHARACTERS) return fault('', 'the text is longer than a records file can be');
  const json = readJson(text);
  if (!json.ok) return { ok: false, errors: [{ place: '', says: json.says, line: json.line }] };
  if (json.repeated.length > 0)
    return { ok: false, errors: json.repeated.map(({ path, says }) => ({ place: placeOf(path), says })) };
  return readRecordsValue(json.value);
}

/** The same of a value: out of a link, or another tab. */
export function readRecordsValue(value: unknown): RecordsRead {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return fault('', 'expected a records file or a site file');
  const fields = value as Readonly<Record<string, unknown>>;
  if (fields.format === 'overrow/site') {
    const read = readSiteValue(value);
    return read.ok ? { ok: true, file: recordsOf(read.file) } : read;
  }
  if (fields.format !== 'overrow/records')
    return fault('format', 'expected "overrow/records", or "overrow/site" for the records in a site file');
  if (typeof fields.version === 'number' && fields.version > 1)
    return fault('version', `expected 1: version ${fields.version} is of a newer page than this`);
  const odd = Object.keys(fields).find((name) => !(FIELDS as readonly string[]).includes(name));
  if (odd !== undefined) return fault(placeOf([odd]), `did not expect this field${didYouMean(odd, [...FIELDS])}`);
  if (!Array.isArray(fields.records)) return fault('records', 'expected a list of marks');
  // The rest is judged as the same parts of a site file are.
  const { version, units, site, records } = fields;
  const read = readSiteValue({ format: 'overrow/site', version, units, name: site, records });
  if (!read.ok)
    return {
      ok: false,
      errors: read.errors.map((error) => (error.place === 'name' ? { ...error, place: 'site' } : error)),
    };
  return { ok: true, file: recordsOf(read.file) };
}

const fault = (place: string, says: string): RecordsRead => ({ ok: false, errors: [{ place, says }] });

const inMetres = lengthRewriter(markSchema, (feet) => tidy(fromFeet(feet, 'm')));
const inFeet = lengthRewriter(markSchema, (metres) => tidy(toFeet(metres, 'm')));

/** The marks of a records file in the units of a site file that is to take them in. */
export function marksIn(units: Units, file: RecordsFile): readonly Mark[] {
  if (file.units === units) return file.records;
  const rewrite = units === 'm' ? inMetres : inFeet;
  return file.records.map((mark) => rewrite(mark));
}
