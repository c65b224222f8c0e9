import { distance } from '../../../routing/plane/space.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { parseLength } from '../../../routing/site/numbers/parse-length.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import { addressOf, type Registers } from '../../../routing/site/records/registers.ts';
import type { Mark, Point3, Site } from '../../../routing/site/site.ts';
import { readingWords } from '../commissioning/measures.ts';
import type { AskedLine, Expected } from './asked.ts';

/** What was written down for a line, and whether it is as expected. */
export interface Recorded {
  readonly says: string;
  readonly by: string;
  readonly on?: string;
  /** Logical time of its mark; 0 of what an older file has in its table. */
  readonly time: number;
  readonly isAsExpected: boolean;
  /** Two people wrote different things; what is told is the later. */
  readonly conflict: boolean;
}

/**
 * What was recorded for a line of the checklist: the one place in which marks of any kind are read for it. Null where
 * nothing was, or it was taken back.
 */
export function recordedFor(asked: AskedLine, site: Site, registers: Registers): Recorded | null {
  const { of, mark } = asked;
  const register = registers.get(addressOf({ of, ...mark }));
  const now = register?.now;
  if (!now) return olderRecord(asked, site);
  return {
    says: saysOf(now, asked.expected, site),
    by: now.by,
    ...(now.on !== undefined && { on: now.on }),
    time: now.time,
    isAsExpected: isAsExpected(asked.expected, now, site),
    conflict: register.conflict,
  };
}

/** What the table of a file without records says of a drop. */
function olderRecord({ of, list, mark: { what, part }, expected }: AskedLine, site: Site): Recorded | null {
  const found = list === 'drops' ? site.asBuilt.get(of) : undefined;
  if (!found) return null;
  const told = {
    by: found.checkedBy ?? '',
    ...(found.checkedOn !== undefined && { on: found.checkedOn }),
    time: 0,
    conflict: false,
  };
  if (what === 'set' && found.checkedOn !== undefined) return { ...told, says: 'done', isAsExpected: true };
  const place = what === 'place' && (part === 'box' || part === 'retractor') ? found[part] : undefined;
  if (!place || expected.kind !== 'place') return null;
  return { ...told, says: placeSays(place, expected.at, site), isAsExpected: isWithin(place, expected) };
}

/** What a mark says, in words; of a place also how far it is from the drawing. */
function saysOf(mark: Mark, expected: Expected, site: Site): string {
  if (expected.kind === 'place' && mark.place) return placeSays(mark.place, expected.at, site);
  if (expected.kind === 'seen' && isPlain(mark.text)) return 'as planned';
  return markSays(mark, site);
}

/** What any mark says, in words. */
export function markSays(mark: Mark, { gridlines, units }: Pick<Site, 'gridlines' | 'units'>): string {
  if (mark.place) return gridlineWords(mark.place, gridlines, units);
  if (mark.reading) return readingWords(mark.reading);
  return mark.text || 'done';
}

function placeSays(place: Point3, at: Point3, { gridlines, units }: Site): string {
  const away = distance(place, at);
  const words = gridlineWords(place, gridlines, units);
  return away < 1 / 192 ? `${words}, as drawn` : `${words}, ${printLength(away, units)} from the drawing`;
}

const isWithin = (place: Point3, { at, within }: Extract<Expected, { kind: 'place' }>): boolean =>
  distance(place, at) <= within + 1e-9;

/** Words that say that a thing is as the plan has it. */
const isPlain = (text: string | undefined): boolean => text === undefined || /^(ok|as planned)?$/i.test(text.trim());

/** Slips of the tape and of rounding: 1/16 in. */
const SLIP = 1 / 192;

function isAsExpected(expected: Expected, mark: Mark, { units }: Site): boolean {
  if (expected.kind === 'step') return true;
  if (expected.kind === 'place') return mark.place !== undefined && isWithin(mark.place, expected);
  if (expected.kind === 'seen') return isPlain(mark.text);
  const value = valueIn(mark.text ?? '', expected.kind, units);
  const slip = expected.kind === 'length' ? SLIP : 1e-9;
  return value !== null && value >= (expected.least ?? -Infinity) - slip && value <= (expected.most ?? Infinity) + slip;
}

/** The value in what was written down: feet, or a number with or without its unit; null where there is none. */
export function valueIn(text: string, kind: 'length' | 'number', units: Site['units']): number | null {
  if (kind === 'length') {
    const read = parseLength(text, units);
    return read.ok ? read.feet : null;
  }
  const [, number] = /^\s*(-?\d[\d,]*(?:\.\d+)?)\s*[^\d\s]{0,6}\s*$/.exec(text) ?? [];
  return number === undefined ? null : Number(number.replaceAll(',', ''));
}
