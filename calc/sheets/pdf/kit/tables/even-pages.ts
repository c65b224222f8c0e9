import type { Area } from '../area.ts';
import type { Job } from '../draft.ts';
import type { FlowRoom } from './flow-room.ts';
import { flowTables, type Table, type TablePage } from './table.ts';

/** Share of a field that the tables of a page take. */
export const filledShare = (page: TablePage, field: Area): number =>
  page.reduce((sum, { area }) => sum + area.width * area.height, 0) / (field.width * field.height);

/** A last sheet with less than this on it has the others hand it some of theirs. */
const LEAST = 0.35;
/** So many of the last tables are tried as the first of a sheet. */
const MOST_TRIED = 40;

/**
 * Tables over as many sheets as they take. Where the last would be as good as empty, all are filled as far down, or one
 * ends before as many tables, as makes the emptiest fullest without a sheet more.
 */
export function evenPages(
  tables: readonly Table[],
  { shape: { field }, lettering }: Pick<Job, 'shape' | 'lettering'>,
  given?: FlowRoom,
): readonly TablePage[] {
  const room = given ?? { first: field, count: 0, most: field.width };
  const leastOf = (pages: readonly TablePage[]): number =>
    Math.min(...pages.map((page, i) => filledShare(page, i < room.count ? room.first : field)));
  let best = flowTables(tables, field, lettering, room);
  if (best.length < 2 || filledShare(best.at(-1)!, field) >= LEAST) return best;
  const most = best.length;
  const consider = (pages: readonly TablePage[]): void => {
    if (pages.length <= most && leastOf(pages) > leastOf(best)) best = pages;
  };
  for (let share = 0.95; share > 0.4; share -= 0.05) {
    const lower = (area: Area): Area => ({
      ...area,
      y: area.y + (1 - share) * area.height,
      height: share * area.height,
    });
    const pages = flowTables(tables, lower(field), lettering, { ...room, first: lower(room.first) });
    if (pages.length > most) break;
    consider(pages);
  }
  for (let at = Math.max(1, tables.length - MOST_TRIED); at < tables.length; at++) {
    const before = flowTables(tables.slice(0, at), field, lettering, room);
    const after = flowTables(tables.slice(at), field, lettering, {
      ...room,
      count: Math.max(0, room.count - before.length),
    });
    consider([...before, ...after]);
  }
  return best;
}
