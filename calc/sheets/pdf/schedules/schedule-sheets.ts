import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import { withDifferences } from '../as-built/differences.ts';
import { revisedTables } from '../kit/deltas.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { flowTables, type Table, type TablePage } from '../kit/table.ts';
import { drawTable } from '../kit/table-drawing.ts';
import { accessibleSchedule } from './accessible-schedule.ts';
import { conduitSchedule } from './conduit-schedule.ts';
import { feederSchedule } from './feeder-schedule.ts';
import { panelTables } from './panel-schedules.ts';
import { revisionSchedule } from './revision-schedule.ts';
import { runSchedule } from './run-schedule.ts';
import { setOutTables } from './set-out-tables.ts';
import { settingOutSchedule } from './setting-out-schedule.ts';
import { takeoffSchedule } from './takeoff-schedule.ts';

/** The schedules, one after another over as many sheets as they take. */
export function scheduleSheets(job: Job): readonly Draft[] {
  return sheetsFor(job, 'schedules', revisedTables(job, schedulesOf), titleOf);
}

/** What a revised set changes, after all other schedules: sheets keep their numbers. */
export const revisionSheets = (job: Job): readonly Draft[] =>
  sheetsFor(job, 'revision', [revisionSchedule(job)], () => `Changes of revision ${job.revision?.number ?? ''}`);

function sheetsFor(
  job: Job,
  key: string,
  tables: readonly Table[],
  titled: (page: TablePage) => string,
): readonly Draft[] {
  const filled = tables.filter(({ rows }) => rows.length > 0);
  return flowTables(filled, job.shape.field, job.lettering).map((page, i) => ({
    key: `${key} ${i + 1}`,
    series: 'E-6',
    title: titled(page),
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
    },
  }));
}

function schedulesOf(job: Job): readonly Table[] {
  const drawn = job.record && { ...job, ...job.record.drawn };
  const of = (part: SheetPart, tables: (job: Job) => readonly Table[]): readonly Table[] => {
    if (!job.parts.has(part)) return [];
    if (!drawn) return tables(job);
    const before = new Map(tables(drawn).map((table) => [table.title, table]));
    return tables(job).map((table) => withDifferences(table, before.get(table.title)));
  };
  return [
    ...of('circuits', (one) => [runSchedule(one)]),
    ...of('panels', panelTables),
    ...of('feeders', (one) => [feederSchedule(one)]),
    ...of('conduits', (one) => [conduitSchedule(one)]),
    // What was measured stands beside the drawing, which is what it was set out by.
    ...(job.parts.has('setting-out') ? [settingOutSchedule(drawn ?? job), ...setOutTables(drawn ?? job)] : []),
    ...of('accessible', (one) => [accessibleSchedule(one)]),
    ...of('takeoff', (one) => [takeoffSchedule(one)]),
  ];
}

/** `Schedules: circuits and runs, panels`. */
const titleOf = (page: TablePage): string =>
  `Schedules: ${[...new Set(page.map(({ table }) => table.short))].join(', ')}`;
