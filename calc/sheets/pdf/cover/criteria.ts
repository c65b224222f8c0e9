import { ruleAt, ruleWords } from '../../../../routing/site/rules/rule-value.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { assumptionsOf } from '../../../plan/assumptions.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { ruleNotesOf } from '../../../tables/rule-notes-of.ts';
import type { Table } from '../kit/tables/table.ts';

/** The rules that the plan was checked against, each with its value on this site and what it goes by. */
export function criteriaTable(site: Site, width: number): Table {
  return {
    short: 'criteria',
    title: 'Design criteria',
    width,
    lead: ['What the plan was checked against. The basis is that of the usual value; the site may have another.'],
    columns: [{ head: 'Criterion', most: 26 }, { head: 'Value', align: 'right' }, { head: 'Basis' }],
    rows: ruleNotesOf(tablesOf(site.rules)).map((note) => [
      note.meaning,
      ruleWords(note, ruleAt(site.rules, note.path), site.units),
      note.basis,
    ]),
  };
}

/** What the plan assumes and no code or standard sets, with what is to be confirmed before it is built by. */
export function assumptionsTable(site: Site, width: number): Table {
  return {
    short: 'assumptions',
    title: 'Assumptions to be confirmed',
    width,
    columns: [{ head: 'Assumed', most: 22 }, { head: 'Value', align: 'right' }, { head: 'Confirm by' }],
    rows: assumptionsOf(site).map(({ name, value, confirm }) => [sentence(name), value, sentence(confirm)]),
  };
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
