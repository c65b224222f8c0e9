import { BUDGET, type Imported, refused } from './imported.ts';

/** An entity, table entry or block header of a DXF: its kind and its group codes with their values, in order. */
export interface DxfRecord {
  readonly kind: string;
  /** Line of the file on which it begins, from 1. */
  readonly line: number;
  readonly codes: readonly number[];
  readonly values: readonly string[];
}

/** A DXF cut into records, section by section. */
export type DxfSections = ReadonlyMap<string, readonly DxfRecord[]>;

const CODE = /^\s*-?\d{1,4}\s*$/;
/** The most group codes of one record that is not a list of points. */
const MOST_RECORDS = 4 * BUDGET.entities;

/**
 * Cuts the text of a DXF into records. A fault where it is no text DXF: the wrong signs in place of a group code, no
 * section, cut off before its end, or past the budget.
 */
export function dxfSections(text: string): Imported<DxfSections> {
  if (text.length > BUDGET.characters)
    return refused('the file', `is over ${BUDGET.characters / 1e6} million characters`);
  if (text.includes('\0')) return refused('the file', 'is not text; a binary DXF has to be saved as a text DXF');
  const lines = text.split(/\r\n|\r|\n/);
  const sections = new Map<string, DxfRecord[]>();
  let records: DxfRecord[] | null = null;
  let count = 0;
  for (let i = 0; i + 1 < lines.length; ) {
    if (!CODE.test(lines[i]!)) return refused(`line ${i + 1}`, `expected a group code, found ${shortened(lines[i]!)}`);
    if (Number(lines[i]) !== 0) {
      i += 2;
      continue;
    }
    const kind = lines[i + 1]!.trim();
    const line = i + 1;
    const codes: number[] = [];
    const values: string[] = [];
    i += 2;
    while (i + 1 < lines.length) {
      if (!CODE.test(lines[i]!))
        return refused(`line ${i + 1}`, `expected a group code, found ${shortened(lines[i]!)}`);
      const code = Number(lines[i]);
      if (code === 0) break;
      codes.push(code);
      values.push(lines[i + 1]!.trim());
      i += 2;
    }
    if (kind === 'EOF')
      return sections.size === 0 ? refused('the file', 'holds no section') : { ok: true, value: sections };
    if (++count > MOST_RECORDS)
      return refused(`line ${line}`, `is past ${MOST_RECORDS.toLocaleString('en-US')} records`);
    if (kind === 'SECTION') {
      const name = values[codes.indexOf(2)] ?? '';
      records = sections.get(name) ?? [];
      sections.set(name, records);
      // The variables of the header stand in the section's own record.
      if (name === 'HEADER') records.push({ kind: 'HEADER', line, codes, values });
    } else if (kind === 'ENDSEC') records = null;
    else records?.push({ kind, line, codes, values });
  }
  return refused(
    `line ${lines.length}`,
    sections.size === 0 ? 'no DXF: it holds no section' : 'the file ends before its EOF',
  );
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

/** The flags of a record (group code 70). */
export const flagsOf = (record: DxfRecord): number => Math.trunc(numberOf(record, 70, 0)) || 0;

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
