import { checklistOf } from '../../../field/checklist/checklist.ts';
import { OPEN_KINDS, openItems } from '../../../field/open/open-items.ts';
import { LINE_STATE_WORDS, STATE_NOTE } from '../../site-work/checklist-sheet.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { flowTables, type Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';

/** What a set is of: the site as it is in its file, with what was written down. */
const fileOf = ({ record, site, plan }: Job) => record?.file ?? { site, plan };

/** The inspection checklist, with what was recorded and room to write in what was not. */
export const checklistSheets = (job: Job): readonly Draft[] =>
  flowed(job, 'checklist', 'Inspection checklist', checklistTable);

function checklistTable(job: Job): Table {
  const { site, plan } = fileOf(job);
  return {
    short: 'checklist',
    title: 'Inspection checklist',
    lead: [STATE_NOTE],
    columns: [
      { head: 'Of' },
      { head: 'What', most: 20 },
      { head: 'Where', most: 22 },
      { head: 'Checked against', most: 24 },
      { head: 'Expected', most: 24 },
      { head: 'Recorded', least: 10, most: 24 },
      { head: 'By, on', least: 6, most: 9 },
      { head: 'State' },
    ],
    rows: checklistOf(site, plan).map(({ of, what, where, rule, expects, recorded, by, on, state, conflict }) => [
      of,
      what,
      where,
      rule,
      expects,
      conflict ? `${recorded} (two say different things)` : (recorded ?? ''),
      [by, on].filter(Boolean).join(' '),
      LINE_STATE_WORDS[state],
    ]),
  };
}

/** Everything that is still open, in one list. */
export const openSheets = (job: Job): readonly Draft[] => flowed(job, 'open items', 'Open items', openTable);

function openTable(job: Job): Table {
  const { site, plan } = fileOf(job);
  const items = openItems(site, plan, job.record?.cost ?? null);
  return {
    short: 'open items',
    title: items.length === 0 ? 'Open items: none' : `Open items: ${items.length}`,
    columns: [
      { head: 'Kind', most: 18 },
      { head: 'Of', most: 22 },
      { head: 'What is open', most: 60 },
      { head: 'By, on', least: 6, most: 10 },
    ],
    rows:
      items.length === 0
        ? [['–', '', 'Nothing that the plan and the records know of.', '']]
        : items.map(({ kind, of, says, by, on }) => [OPEN_KINDS[kind], of, says, [by, on].filter(Boolean).join(' ')]),
  };
}

const flowed = (job: Job, key: string, title: string, tableOf: (job: Job) => Table): readonly Draft[] =>
  flowTables(
    revisedTables(job, (one) => [tableOf(one)]),
    job.shape.field,
    job.lettering,
  ).map((page, i) => ({
    key: `${key} ${i + 1}`,
    series: 'E-7',
    title: i === 0 ? title : `${title}, continued`,
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
    },
  }));
