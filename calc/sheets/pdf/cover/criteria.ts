import { printLength } from '../../../../routing/site/feet-inches.ts';
import { RULE_NOTES, type RuleNote } from '../../../../routing/site/rule-notes.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { NONE } from '../schedules/figures.ts';
import type { Table } from '../table.ts';

/** The rules that the plan was checked against, each with its value on this site and where its usual value comes from. */
export function criteriaTable(site: Site, width: number): Table {
  return {
    short: 'criteria',
    title: 'Rules of the site',
    width,
    lead: ['What the plan was checked against. A source is that of the usual value; the site may have another.'],
    columns: [{ head: 'Rule', most: 22 }, { head: 'Value', align: 'right' }, { head: 'Source of the usual value' }],
    rows: RULE_NOTES.map((note) => [note.meaning, valueWords(site, note), note.source]),
  };
}

function valueWords(site: Site, { path, unit }: RuleNote): string {
  const value = path
    .split('.')
    .reduce<unknown>((at, name) => (at as Readonly<Record<string, unknown>> | undefined)?.[name], site.rules);
  if (value === undefined || value === null) return NONE;
  if (typeof value !== 'number') return String(value);
  if (unit === 'ft') return printLength(value, site.units);
  if (unit === 'share' || path === 'coverage') return `${Number((100 * value).toPrecision(6))}%`;
  if (unit === 'percent') return `${value}%`;
  if (unit === 'degrees') return `${value}°`;
  if (unit === 'C') return `${value} °C`;
  return unit === '' ? String(value) : `${value} ${unit}`;
}
