import { type Area, right } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { lowered } from '../kit/lettering/lowered.ts';
import { evenPages, filledShare } from '../kit/tables/even-pages.ts';
import type { FlowRoom } from '../kit/tables/flow-room.ts';
import { TABLE_GAP, type TablePage } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { groupSheets, joinedGroups, supplyGroups, type TableGroup, titleOf } from '../schedules/schedule-sheets.ts';
import { oneLineIn, oneLineSheets } from './one-line-sheets.ts';

/** Some way to put the supply on sheets, and how full they are, the emptiest first. */
interface Layout {
  readonly sheets: readonly Draft[];
  readonly shares: readonly number[];
}

/** Fewer sheets; of as many, an emptiest that is fuller, and so on. */
function isBetter(way: Layout, than: Layout): boolean {
  if (way.sheets.length !== than.sheets.length) return way.sheets.length < than.sheets.length;
  const at = way.shares.findIndex((share, i) => Math.abs(share - than.shares[i]!) > 1e-6);
  return at >= 0 && way.shares[at]! > than.shares[at]!;
}

/** Share of the room of a one-line that counts as drawn on: a tree and its words, with white between. */
const DRAWN = 0.5;

/** Tables are pressed to no less than this, in sizes of the lettering. */
const NARROWEST = 80;

/** Tables stand no nearer under one another than this, points, and so only where that saves a sheet. */
const CLOSER = 11;

/**
 * One-line, load calculation, schedules and what else is told in tables, on as few sheets as they take: each on its own,
 * or tables beside the one-line of a small supply, the first of them or all. Of ways that take as many, that whose
 * emptiest sheet is fullest.
 */
export function supplySheets(job: Job, others: readonly TableGroup[]): readonly Draft[] {
  const groups = [...supplyGroups(job), ...others].filter(({ tables }) => tables.length > 0);
  const ways = [apart(job, groups)];
  const room = job.parts.has('one-line') ? roomBeside(job) : null;
  const besides = (under: number): readonly Layout[] => {
    if (!room) return [];
    const widths = [job.shape.field.width, room.rest.width, (room.rest.width - TABLE_GAP) / 2];
    return widths
      .filter((most) => most >= NARROWEST * job.lettering.sizes.small)
      .flatMap((most) => groups.flatMap((_, i) => beside(job, groups, i + 1, room, { most, under })));
  };
  ways.push(...besides(TABLE_GAP));
  const best = bestOf(ways);
  const closer = bestOf([best, ...besides(CLOSER)]);
  return (closer.sheets.length < best.sheets.length ? closer : best).sheets;
}

const bestOf = (ways: readonly Layout[]): Layout => ways.reduce((best, way) => (isBetter(way, best) ? way : best));

function apart(job: Job, groups: readonly TableGroup[]): Layout {
  const { field } = job.shape;
  const drawn = job.parts.has('one-line') ? oneLineSheets(job) : [];
  const joined = joinedGroups(job, groups);
  const shares = joined.flatMap(({ tables }) => evenPages(tables, job).map((page) => filledShare(page, field)));
  return {
    sheets: [...drawn, ...joined.flatMap((group) => groupSheets(job, group))],
    shares: [...drawn.map(() => oneLineShare(job, field)), ...shares].sort((a, b) => a - b),
  };
}

/** How far a one-line that has a room to itself fills it: by its columns. */
function oneLineShare(job: Job, field: Area): number {
  const room = roomBeside(job);
  return room === null ? DRAWN : (DRAWN * room.left.width) / field.width;
}

interface Beside {
  readonly left: Area;
  readonly rest: Area;
  readonly drawn: readonly Draft[];
}

/** The narrowest part of its sheets in which the one-line is as large as in all of them, and what is left beside it. */
function roomBeside(job: Job): Beside | null {
  const { field } = job.shape;
  const { size, sheets } = oneLineIn(job, field);
  if (sheets.length === 0) return null;
  for (let width = size.column; width < field.width; width += size.column) {
    const left: Area = { ...field, width };
    const inIt = oneLineIn(job, left);
    if (inIt.sheets.length > sheets.length || inIt.size.letters < size.letters) continue;
    const x = right(left) + TABLE_GAP;
    return { left, rest: { ...field, x, width: right(field) - x }, drawn: inIt.sheets };
  }
  return null;
}

/**
 * The first groups in one flow from beside the one-line on, no table beside it wider than so much, the others after it; none where
 * some sheet of the one-line has nothing beside it.
 */
function beside(
  job: Job,
  groups: readonly TableGroup[],
  count: number,
  { left, rest, drawn }: Beside,
  { most, under }: Required<Pick<FlowRoom, 'most' | 'under'>>,
): readonly Layout[] {
  const { field } = job.shape;
  const first = groups.slice(0, count);
  const tables = first.flatMap((group) => group.tables);
  const pages = evenPages(tables, job, { first: rest, count: drawn.length, most, under });
  if (pages.length < drawn.length || pages.some((page) => page.length === 0)) return [];
  const more = pages.slice(drawn.length);
  const others = joinedGroups(job, groups.slice(count));
  const flowed = { key: first[0]!.key, tables, titled: titleOf };
  const sheets: readonly Draft[] = [
    ...drawn.map(
      (one, i): Draft => ({
        ...one,
        title: `${one.title} and ${lowered(titleOf(pages[i]!))}`,
        draw: withTables(one, pages[i]!),
      }),
    ),
    ...more.map((one, i): Draft => tableSheet(flowed, one, drawn.length + i)),
    ...others.flatMap((group) => groupSheets(job, group)),
  ];
  const shares = [
    ...drawn.map((_, i) => (filledShare(pages[i]!, rest) * rest.width + DRAWN * left.width) / field.width),
    ...more.map((one) => filledShare(one, field)),
    ...others.flatMap((group) => evenPages(group.tables, job).map((one) => filledShare(one, field))),
  ];
  return [{ sheets, shares: shares.sort((a, b) => a - b) }];
}

const withTables =
  (drawn: Draft, page: TablePage): Draft['draw'] =>
  (pen, numbers) => {
    drawn.draw(pen, numbers);
    for (const part of page) drawTable(pen, part);
  };

const tableSheet = ({ key, titled }: TableGroup, page: TablePage, i: number): Draft => ({
  key: `${key} ${i + 1}`,
  series: 'E-6',
  title: titled(page),
  scale: NOT_TO_SCALE,
  draw: (pen) => {
    for (const part of page) drawTable(pen, part);
  },
});
