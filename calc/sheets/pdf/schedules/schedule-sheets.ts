import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import { withDifferences } from '../as-built/differences.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { evenPages } from '../kit/tables/even-pages.ts';
import { flowTables, type Table, type TablePage } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { accessibleSchedule } from './accessible-schedule.ts';
import { conduitSchedule } from './conduit-schedule.ts';
import { feederSchedule } from './feeder-schedule.ts';
import { loadTables } from './load-tables.ts';
import { panelTables } from './panel-schedules.ts';
import { revisionSchedule } from './revision-schedule.ts';
import { runSchedule } from './run-schedule.ts';
import { setOutTables } from './set-out-tables.ts';
import { settingOutSchedule } from './setting-out-schedule.ts';
import { steelTables } from './steel-tables.ts';
import { takeoffSchedule } from './takeoff-schedule.ts';

/** Tables that go together, and what their sheets are called. */
export interface TableGroup {
  readonly key: string;
  readonly tables: readonly Table[];
  readonly titled: (page: TablePage) => string;
}

/** The load calculation, the schedules and the loads on the structure, in the order of their sheets. */
export function supplyGroups(job: Job): readonly TableGroup[] {
  const of = (part: SheetPart, tables: (job: Job) => readonly Table[]): readonly Table[] =>
    (job.parts.has(part) ? revisedTables(job, tables) : []).filter(({ rows }) => rows.length > 0);
  return [
    { key: 'load calculation', tables: of('loads', loadTables), titled: () => 'Load calculation' },
    {
      key: 'schedules',
      tables: revisedTables(job, schedulesOf).filter(({ rows }) => rows.length > 0),
      titled: titleOf,
    },
    { key: 'loads on the structure', tables: of('steel', steelTables), titled: () => 'Loads on the structure' },
  ];
}

/**
 * Groups on sheets of their own, those put together that take fewer sheets so, and no more of them than that asks for: of
 * ways that take as few, that which puts together least.
 */
export function joinedGroups(job: Job, groups: readonly TableGroup[]): readonly TableGroup[] {
  const sheetsOf = (some: readonly TableGroup[]): number =>
    some.reduce((sum, { tables }) => sum + flowTables(tables, job.shape.field, job.lettering).length, 0);
  let [best = [], ...others] = partitions(groups.filter(({ tables }) => tables.length > 0));
  for (const other of others) if (sheetsOf(other) < sheetsOf(best)) best = other;
  return best;
}

/** Every way to put neighbors together, from none to all. */
function partitions(groups: readonly TableGroup[]): readonly (readonly TableGroup[])[] {
  const [first, ...rest] = groups;
  if (first === undefined) return [[]];
  const apart = partitions(rest).map((others) => [first, ...others]);
  const [second, ...last] = rest;
  if (second === undefined) return apart;
  const both = { key: first.key, tables: [...first.tables, ...second.tables], titled: titleOf };
  return [...apart, ...partitions([both, ...last])];
}

/** What a revised set changes, after all other schedules: sheets keep their numbers. */
export const revisionSheets = (job: Job): readonly Draft[] =>
  groupSheets(job, {
    key: 'revision',
    tables: [revisionSchedule(job)].filter(({ rows }) => rows.length > 0),
    titled: () => `Changes of revision ${job.revision?.number ?? ''}`,
  });

/** A group of tables on sheets of its own. */
export function groupSheets(job: Job, { key, tables, titled }: TableGroup): readonly Draft[] {
  return evenPages(tables, job).map((page, i) => ({
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

/** `Schedules: circuits and runs, panels`; what is no schedule stands before or after them by its own name. */
export function titleOf(page: TablePage): string {
  const names = [...new Set(page.map(({ table }) => table.short))];
  const schedules = names.filter((name) => !APART.has(name));
  const parts = [
    ...(names.includes('load') || names.includes('steps') ? ['load calculation'] : []),
    ...(schedules.length > 0 ? [`schedules: ${schedules.join(', ')}`] : []),
    ...[STRUCTURE, METERS].filter((name) => names.includes(name)),
  ];
  const title = parts.join('; ');
  return `${title[0]!.toUpperCase()}${title.slice(1)}`;
}

const STRUCTURE = 'loads on the structure';
/** Told of days, beside the schedules. */
const METERS = 'energy by stall';
const APART: ReadonlySet<string> = new Set(['load', 'steps', STRUCTURE, METERS]);
