import { BUDGET, type Imported, refused } from '../imported.ts';

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
  /** Why it was read no further than that; null where it was read to its end. */
  readonly stops: string | null;
}

/** The most records: vertices of old polylines are records of their own. */
const MOST_RECORDS = 4 * BUDGET.entities;
/** After this group code stands an object within the record, with group codes of its own. */
const EMBEDDED = 101;

/**
 * Cuts the text of a DXF into records. What stands after its end is not looked at; one that has no end, or goes wrong on
 * its way, is taken as far as it goes. A fault where there is nothing to take: no text DXF, no section, or past the
 * budget. `tell` hears what share is read.
 */
export function dxfSections(text: string, tell?: (share: number) => void): Imported<DxfSections> {
  if (text.length > BUDGET.characters)
    return refused('the file', `is over ${BUDGET.characters / 1e6} million characters`);
  if (text.includes('\0')) return refused('the file', 'is not text; a binary DXF has to be saved as a text DXF');
  // Values are trimmed, so that a return before the end of a line does no harm.
  const lines = text.split(text.includes('\n') ? '\n' : '\r');
  const sections = new Map<string, DxfRecord[]>();
  let records: DxfRecord[] | null = null;
  let count = 0;
  const ended = (line: number, says: string): Imported<DxfSections> =>
    (sections.get('ENTITIES')?.length ?? 0) > 0
      ? { ok: true, value: { sections, stops: `${says} (line ${line.toLocaleString('en-US')})` } }
      : refused(`line ${line}`, sections.size === 0 ? 'no DXF: it holds no section' : says);
  for (let i = 0; i + 1 < lines.length; ) {
    const opens = codeOf(lines[i]!);
    if (Number.isNaN(opens)) return ended(i + 1, `expected a group code, found ${shortened(lines[i]!)}`);
    if (opens !== 0) {
      i += 2;
      continue;
    }
    const kind = lines[i + 1]!.trim();
    if (kind === 'EOF')
      return sections.size === 0
        ? refused('the file', 'holds no section')
        : { ok: true, value: { sections, stops: null } };
    const line = i + 1;
    const own: Codes = { codes: [], values: [] };
    let within: Codes | null = null;
    let wrong = 0;
    for (i += 2; i + 1 < lines.length; i += 2) {
      const code = codeOf(lines[i]!);
      if (code === 0) break;
      if (Number.isNaN(code)) {
        wrong = i + 1;
        break;
      }
      if (code === EMBEDDED) within = { codes: [], values: [] };
      const to = within ?? own;
      to.codes.push(code);
      to.values.push(lines[i + 1]!.trim());
    }
    if (++count > MOST_RECORDS)
      return refused(`line ${line}`, `is past ${MOST_RECORDS.toLocaleString('en-US')} records`);
    if (count % 20_000 === 0) tell?.(i / lines.length);
    if (kind === 'SECTION') {
      const name = own.values[own.codes.indexOf(2)] ?? '';
      records = sections.get(name) ?? [];
      sections.set(name, records);
      // The variables of the header stand in the section's own record.
      if (name === 'HEADER') records.push({ kind: 'HEADER', line, ...own });
    } else if (kind === 'ENDSEC') records = null;
    else records?.push({ kind, line, ...own, ...(within && { embedded: within }) });
    if (wrong > 0) return ended(wrong, `expected a group code, found ${shortened(lines[wrong - 1]!)}`);
  }
  return ended(lines.length, 'the file ends before its EOF');
}

interface Codes {
  readonly codes: number[];
  readonly values: string[];
}

/** A group code, a whole number of at most four digits; NaN where a line is none. */
function codeOf(line: string): number {
  let code = 0;
  let digits = 0;
  let negative = false;
  let over = false;
  for (let i = 0; i < line.length; i++) {
    const sign = line.charCodeAt(i);
    if (sign >= 48 && sign <= 57 && !over) {
      code = 10 * code + sign - 48;
      digits += 1;
    } else if (sign === 45 && digits === 0 && !negative && !over) negative = true;
    else if (sign === 32 || sign === 9 || sign === 13 || sign === 0xfeff) over = digits > 0 || negative;
    else return Number.NaN;
  }
  return digits < 1 || digits > 4 ? Number.NaN : negative ? -code : code;
}

const shortened = (text: string): string => JSON.stringify(text.trim().slice(0, 24));

/** The first value of a group code as text; undefined where the record has none. */
export function textOf(record: DxfRecord, code: number): string | undefined {
  const at = record.codes.indexOf(code);
  return at < 0 ? undefined : record.values[at];
}

/** The first value of a group code as a number; NaN where it is none or past every drawing. */
export function numberOf(record: DxfRecord, code: number, otherwise: number): number {
  const text = textOf(record, code);
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
