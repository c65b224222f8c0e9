import { checklistOf } from '../../../field/checklist/checklist.ts';
import { OPEN_KINDS, openItems } from '../../../field/open/open-items.ts';
import { LINE_STATE_WORDS, STATE_NOTE } from '../../site-work/checklist-sheet.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { lowered } from '../kit/lettering/lowered.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { evenPages } from '../kit/tables/even-pages.ts';
import type { Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';

/** What a set is of: the site as it is in its file, with what was written down. */
const fileOf = ({ record, site, plan }: Job) => record?.file ?? { site, plan };

/**
 * The inspection checklist, with what was recorded and room to write in what was not, then everything that is still open:
 * each on sheets of its own, or one after the other where that takes a sheet less.
 */
export function inspectionSheets(job: Job): readonly Draft[] {
  const asked = [...(job.parts.has('checklist') ? [CHECKLIST] : []), ...(job.parts.has('open-items') ? [OPEN] : [])];
  const apart = asked.map((one) => flowed(job, [one]));
  const joined = flowed(job, asked);
  return joined.length < apart.flat().length ? joined : apart.flat();
}

interface Listed {
  readonly short: string;
  readonly title: string;
  readonly tableOf: (job: Job) => Table;
}

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

const CHECKLIST: Listed = { short: 'checklist', title: 'Inspection checklist', tableOf: checklistTable };
const OPEN: Listed = { short: 'open items', title: 'Open items', tableOf: openTable };

function flowed(job: Job, listed: readonly Listed[]): readonly Draft[] {
  const tables = revisedTables(job, (one) => listed.map(({ tableOf }) => tableOf(one)));
  const begun = new Set<string>();
  return evenPages(tables, job).map((page, i) => {
    const titles = listed
      .filter(({ short }) => page.some(({ table }) => table.short === short))
      .map(({ title, short }) => (begun.has(short) ? `${title}, continued` : title));
    for (const { table } of page) begun.add(table.short);
    return {
      key: `${listed[0]!.short} ${i + 1}`,
      series: 'E-7',
      title: titles.map((title, at) => (at === 0 ? title : lowered(title))).join('; '),
      scale: NOT_TO_SCALE,
      draw: (pen) => {
        for (const part of page) drawTable(pen, part);
      },
    };
  });
}
