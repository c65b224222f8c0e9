import { type RowShape, type StallRow, stallsThatFit } from '../../../../routing/propose/rows/row-shape.ts';
import type { SlotUse } from '../../../../routing/propose/rows/row-slots.ts';
import { stallRow } from '../../../../routing/propose/rows/stall-row.ts';
import { newIds } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Aisle, Keepout, SiteFile, Stall } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { addAll } from '../../../document/edits/add.ts';
import { type BoardDraft, type DrawTool, lineOf } from '../draft.ts';
import type { StallsOptions } from '../options.ts';

/** A row of stalls along a kerb or an aisle's edge: two presses, or one drag. */
export const stallsTool: DrawTool<StallsOptions> = {
  shape: 'line',
  atOnce: false,
  list: 'stalls',
  edit: ({ file, site }, draft, options) => {
    const row = rowOf(draft, options);
    if (!row) return null;
    const { van } = site.rules.clearHeight;
    return addAll(file, `Add ${counted(row.stalls.length, 'stall')}`, {
      stalls: stallsOf(file, row, options),
      ...(row.access.length > 0 && { keepouts: accessOf(file, row, van) }),
      ...(row.aisles.length > 0 && { aisles: aislesOf(file, row) }),
    });
  },
  words: ({ site }, draft, options) => {
    const row = rowOf(draft, options);
    if (!row) return draft.spots.length > 0 ? ['no stall fits yet'] : [];
    const length = printLength(row.length, site.units);
    const each = options.rows === 'one' ? '' : `, ${row.count} to a row`;
    return [`${row.stalls.length} stalls${each}`, `${length} along, ${printLength(row.across, site.units)} across`];
  },
  advice: (draft, { line }) => {
    const where = line === 'entry' ? 'edge of the aisle where cars drive in' : 'kerb that cars stop at';
    if (draft.whole)
      return {
        action: 'Stalls',
        next: 'Change it beside the board, then set it.',
        keys: [
          ['Enter', 'set'],
          ['X', 'other side'],
          ['Esc', 'throw away'],
        ],
      };
    if (draft.spots.length > 0)
      return {
        action: 'Stalls',
        next: 'Press where the row ends, or type its length.',
        keys: [
          ['0-9', 'length'],
          ['X', 'other side'],
          ['Backspace', 'back'],
          ['Alt', 'no snapping'],
        ],
      };
    return {
      action: 'Stalls',
      next: `Drag along the ${where}.`,
      keys: [
        ['X', 'other side'],
        ['Esc', 'select'],
      ],
    };
  },
  after: (options, { file }) => ({ ...options, start: nextLabel(file, options), accessible: [], vanAccessible: [] }),
  turned: (options) => ({ ...options, side: options.side === 'left' ? 'right' : 'left' }),
};

/** The row that a draft and its options come to; null while it has no length, or no stall fits. */
export function rowOf(draft: BoardDraft, options: StallsOptions): StallRow | null {
  const line = lineOf(draft);
  if (!line) return null;
  const [from, to] = line;
  const shape: RowShape = { ...options, uses: usesOf(options) };
  const count = options.count ?? stallsThatFit(Math.hypot(to[0] - from[0], to[1] - from[1]), shape);
  return count > 0 ? stallRow(from, to, count, shape) : null;
}

function usesOf({ accessible, vanAccessible }: StallsOptions): ReadonlyMap<number, SlotUse> {
  return new Map<number, SlotUse>([
    ...accessible.map((place) => [place, 'accessible'] as const),
    ...vanAccessible.map((place) => [place, 'van-accessible'] as const),
  ]);
}

const labelOf = (number: number): string => String(number).padStart(2, '0');

function stallsOf(file: SiteFile, row: StallRow, { parking, vehicle, prefix, start }: StallsOptions): Stall[] {
  const ids = newIds(file, 'S', row.stalls.length);
  return row.stalls.map(({ at, width, depth, heading, use }, i) => ({
    id: ids[i]!,
    at,
    width,
    depth,
    heading,
    ...(use !== 'standard' && { use }),
    ...(parking !== 'either' && { parking }),
    ...(vehicle !== null && { vehicle }),
    label: `${prefix}${labelOf(start + i)}`,
  }));
}

/** Access aisles are kept clear of what stands or hangs low, up to the headroom of a van's route. */
function accessOf(file: SiteFile, row: StallRow, headroom: number): Keepout[] {
  const ids = newIds(file, 'K', row.access.length);
  return row.access.map((outline, i) => ({
    id: ids[i]!,
    outline: outline as Keepout['outline'],
    from: 0,
    to: headroom,
    blocks: ['equipment', 'drop'],
  }));
}

function aislesOf(file: SiteFile, row: StallRow): Aisle[] {
  const ids = newIds(file, 'A', row.aisles.length);
  return row.aisles.map((outline, i) => ({ id: ids[i]!, outline: outline as Aisle['outline'] }));
}

/** One past the highest number that a label with the prefix has. */
export function nextLabel(file: SiteFile, { prefix }: Pick<StallsOptions, 'prefix'>): number {
  let highest = 0;
  for (const { label } of file.stalls ?? []) {
    if (label === undefined || !label.startsWith(prefix)) continue;
    const digits = label.slice(prefix.length);
    if (/^\d{1,6}$/.test(digits)) highest = Math.max(highest, Number(digits));
  }
  return highest + 1;
}
