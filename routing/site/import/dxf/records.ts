import { BUDGET, type Imported, refused } from '../imported.ts';
import { endOf, type Groups, groupsOf, lineAt } from './groups.ts';

/** An entity, table entry or block header of a DXF: its kind and its group codes with their values, in order. */
export interface DxfRecord {
  readonly kind: string;
  /** Line of the file on which it begins, from 1. */
  readonly line: number;
  readonly codes: readonly number[];
  readonly values: readonly string[];
  /** Codes and values of an object that is embedded in it. */
  readonly embedded?: { readonly codes: readonly number[]; readonly values: readonly string[] };
}

/** A DXF cut into records, section by section. */
export interface DxfSections {
  readonly sections: ReadonlyMap<string, readonly DxfRecord[]>;
  /** Those of the section of entities, read again each time that they are gone through: most of a file is in them. */
  readonly entities: Iterable<DxfRecord>;
  readonly entityCount: number;
  /** Why it was read no further than that; null where it was read to its end. */
  readonly stops: string | null;
}

/** The most records: vertices of old polylines are records of their own. */
const MOST_RECORDS = 4 * BUDGET.entities;
/** After this group code stands an object within the record, with group codes of its own. */
const EMBEDDED = 101;
const ENTITIES = 'ENTITIES';

/**
 * Cuts the text of a DXF into records. What stands after its end is not looked at; one that has no end, or goes wrong on
 * its way, is taken as far as it goes. A fault where there is nothing to take: no text DXF, no section, or past the
 * budget. `tell` hears what share is read.
 */
export function dxfSections(text: string, tell?: (share: number) => void): Imported<DxfSections> {
  if (text.length > BUDGET.characters)
    return refused('the file', `is over ${BUDGET.characters / 1e6} million characters`);
  if (text.includes('\0')) return refused('the file', 'is not text; a binary DXF has to be saved as a text DXF');
  const end = endOf(text);
  const groups = groupsOf(text, end);
  const sections = new Map<string, DxfRecord[]>();
  /** Where each record of the section of entities begins, and on which line. */
  const places: number[] = [];
  let records: DxfRecord[] | null = null;
  let count = 0;
  const entities = {
    *[Symbol.iterator](): Generator<DxfRecord> {
      for (let i = 0; i < places.length; i += 2) {
        const own = groupsOf(text, end, places[i]!, places[i + 1]!);
        own.next();
        yield recordAt(own).record;
      }
    },
  };
  const value = (stops: string | null): DxfSections => ({ sections, entities, entityCount: places.length / 2, stops });
  const ended = (line: number, says: string): Imported<DxfSections> =>
    places.length > 0
      ? { ok: true, value: value(`${says} (line ${line.toLocaleString('en-US')})`) }
      : refused(`line ${line}`, sections.size === 0 ? 'no DXF: it holds no section' : says);
  for (let is = groups.next(); is; ) {
    const opens = groups.code();
    if (Number.isNaN(opens))
      return ended(groups.line(), `expected a group code, found ${lineAt(text, end, groups.from())}`);
    if (opens !== 0) {
      is = groups.next();
      continue;
    }
    const [line, from] = [groups.line(), groups.from()];
    const kind = groups.value();
    if (kind === 'EOF')
      return sections.size === 0 ? refused('the file', 'holds no section') : { ok: true, value: value(null) };
    if (++count > MOST_RECORDS)
      return refused(`line ${line}`, `is past ${MOST_RECORDS.toLocaleString('en-US')} records`);
    if (count % 20_000 === 0) tell?.(from / text.length);
    const isEntity = records !== null && records === sections.get(ENTITIES) && kind !== 'SECTION' && kind !== 'ENDSEC';
    let wrong = false;
    if (isEntity) {
      places.push(from, line);
      for (is = groups.next(); is; is = groups.next()) {
        const code = groups.code();
        wrong = Number.isNaN(code);
        if (code === 0 || wrong) break;
      }
    } else {
      const read = recordAt(groups);
      is = read.is;
      wrong = read.wrong;
      const { record } = read;
      if (kind === 'SECTION') {
        const name = recordText(record, 2) ?? '';
        records = sections.get(name) ?? [];
        sections.set(name, records);
        // The variables of the header stand in the section's own record.
        if (name === 'HEADER') records.push({ ...record, kind: 'HEADER' });
      } else if (kind === 'ENDSEC') records = null;
      else records?.push(record);
    }
    if (wrong) return ended(groups.line(), `expected a group code, found ${lineAt(text, end, groups.from())}`);
  }
  return ended(linesOf(text, end), 'the file ends before its EOF');
}

/** The record that begins where groups stand, whether there is a group after it, and whether that has no code. */
function recordAt(groups: Groups): { readonly record: DxfRecord; readonly is: boolean; readonly wrong: boolean } {
  const [kind, line] = [groups.value(), groups.line()];
  const own: Codes = { codes: [], values: [] };
  let within: Codes | null = null;
  let wrong = false;
  let is = groups.next();
  for (; is; is = groups.next()) {
    const code = groups.code();
    wrong = Number.isNaN(code);
    if (code === 0 || wrong) break;
    if (code === EMBEDDED) within = { codes: [], values: [] };
    const to = within ?? own;
    to.codes.push(code);
    to.values.push(groups.value());
  }
  return { record: { kind, line, ...own, ...(within && { embedded: within }) }, is, wrong };
}

interface Codes {
  readonly codes: number[];
  readonly values: string[];
}

function linesOf(text: string, end: number): number {
  let count = 1;
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) === end) count += 1;
  return count;
}

/** The first value of a group code as text; undefined where the record has none. */
export function recordText(record: DxfRecord, code: number): string | undefined {
  const at = record.codes.indexOf(code);
  return at < 0 ? undefined : record.values[at];
}

/** The first value of a group code as a number; NaN where it is none or past every drawing. */
export function numberOf(record: DxfRecord, code: number, otherwise: number): number {
  const text = recordText(record, code);
  return text === undefined ? otherwise : asNumber(text);
}

/** A number as a DXF writes it; NaN where it is none, not finite or larger than any drawing. */
export function asNumber(text: string): number {
  const value = text === '' ? Number.NaN : Number(text);
  return Math.abs(value) <= BUDGET.coordinate ? value : Number.NaN;
}

/** The flags of a record, under group code 70 in most. */
export const flagsOf = (record: DxfRecord, code = 70): number => Math.trunc(numberOf(record, code, 0)) || 0;

/** Every value of a group code as a number, in order. */
export const numbersOf = (record: DxfRecord, code: number): readonly number[] =>
  record.values.filter((_, i) => record.codes[i] === code).map(asNumber);

/** Points given by repeated group codes: x under `code`, y under `code + 10`. */
export function pointsOf(record: DxfRecord, code: number): readonly (readonly [x: number, y: number])[] {
  const points: [number, number][] = [];
  for (let i = 0; i < record.codes.length; i++) {
    const at = record.codes[i];
    if (at === code) points.push([asNumber(record.values[i]!), 0]);
    else if (at === code + 10 && points.length > 0) points[points.length - 1]![1] = asNumber(record.values[i]!);
  }
  return points;
}
