import type { Job } from '../kit/draft.ts';
import { TABLE_GAP } from '../kit/tables/table.ts';

/** A column of a general sheet is about this wide, in sizes of the lettering. */
const COLUMN = 58;

/** Width of the columns of the general sheets, as many as a sheet has room for. */
export function columnWidth({ shape: { field }, lettering }: Pick<Job, 'shape' | 'lettering'>): number {
  const columns = Math.max(1, Math.round(field.width / (COLUMN * lettering.sizes.small)));
  return (field.width - (columns - 1) * TABLE_GAP) / columns;
}
