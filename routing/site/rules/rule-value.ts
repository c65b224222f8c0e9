import { printLength } from '../numbers/feet-inches.ts';
import { printTemperature, printTemperatureRange } from '../numbers/temperature.ts';
import type { Units } from '../schema/vocabulary.ts';
import type { Rules } from '../site.ts';
import { RULE_NOTES, type RuleNote, type RulePath } from './rule-notes.ts';

/** What a site's rules have at a path. */
export const ruleAt = (rules: Rules, path: RulePath): string | number =>
  path.split('.').reduce<unknown>((at, name) => (at as Readonly<Record<string, unknown>>)[name], rules) as
    | string
    | number;

/** A rule's value as people read it: lengths in `units`, shares and drops in %, temperatures in C and F. */
export function ruleWords(
  { path, unit }: Pick<RuleNote, 'path' | 'unit'>,
  value: string | number,
  units: Units,
): string {
  if (typeof value !== 'number') return value;
  if (unit === 'ft') return printLength(value, units);
  if (unit === 'share' || path === 'coverage') return `${Number((100 * value).toPrecision(6))}%`;
  if (unit === '%') return `${value}%`;
  if (unit === 'degrees') return `${value}°`;
  if (unit === '°C') return path === 'temperatureRangeC' ? printTemperatureRange(value) : printTemperature(value);
  return unit === '' ? String(value) : `${value} ${unit}`;
}

/** Rules that a site sets otherwise than by default. */
export const changedNotes = (rules: Rules): readonly RuleNote[] =>
  RULE_NOTES.filter((note) => ruleAt(rules, note.path) !== note.default);
