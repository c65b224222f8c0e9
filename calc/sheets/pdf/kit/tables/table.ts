import { kept } from '../../../../../routing/kept/kept.ts';
import { type Area, right, top } from '../area.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { LEADING } from '../lettering/letters.ts';
import { wrapped } from '../lettering/lines-of-text.ts';
import { givenWidths, pressed } from './column-widths.ts';
import type { FlowRoom } from './flow-room.ts';

export interface TableColumn {
  readonly head: string;
  readonly align?: 'left' | 'middle' | 'right';
  /** Widest that it grows before its text is wrapped, in sizes of the lettering. */
  readonly most?: number;
  /** Narrowest that it gets, in the same. */
  readonly least?: number;
}

export interface TableCell {
  readonly text: string;
  /** Colours shown as small squares before the text. */
  readonly swatches?: readonly string[];
}

/** A table of a sheet before it is laid out. */
export interface Table {
  /** What the title of a sheet calls it: `conduits`. */
  readonly short: string;
  readonly title: string;
  /** Lines between title and head, on each part. */
  readonly lead?: readonly string[];
  readonly columns: readonly TableColumn[];
  /** It is parted only where no column of a sheet has room for all of it. */
  readonly isWhole?: boolean;
  /** A list, without a head or rules. */
  readonly isPlain?: boolean;
  /** Width that it is given, points: its last column takes what the others leave. */
  readonly width?: number;
  readonly rows: readonly (readonly (string | TableCell)[])[];
  /** Lines under its last row. */
  readonly foot?: readonly string[];
  /** Places of what a revision changed, for a delta each with its mark. */
  readonly deltas?: TableDeltas;
}

/** Counted from 0 among the rows, the lines before them and the lines after them. */
export interface TableDeltas {
  readonly number: string;
  readonly rows: ReadonlySet<number>;
  readonly lead: ReadonlySet<number>;
  readonly foot: ReadonlySet<number>;
}

/** A line of text, and whether a delta stands beside it. */
export interface LaidLine {
  readonly text: string;
  readonly hasDelta: boolean;
}

/** A row as it is drawn: the lines of each cell. */
export interface LaidRow {
  readonly cells: readonly { readonly lines: readonly string[]; readonly swatches: readonly string[] }[];
  readonly height: number;
  readonly hasDelta: boolean;
}

/** A part of a table that stands on one place of a sheet. */
export interface TablePart {
  readonly table: Table;
  readonly area: Area;
  readonly widths: readonly number[];
  readonly title: string;
  readonly lead: readonly LaidLine[];
  readonly head: LaidRow;
  readonly rows: readonly LaidRow[];
  readonly foot: readonly LaidLine[];
}

/** Parts of tables on one sheet. */
export type TablePage = readonly TablePart[];

export const CELL_PAD = 4;
export const SWATCH = 6;
export const SWATCH_STEP = SWATCH + 1.5;
/** What so many swatches take before a text, points. */
export const swatchRoom = (count: number): number => (count === 0 ? 0 : count * SWATCH_STEP + 2);
/** Between tables, down and across, points. */
export const TABLE_GAP = 22;
const TITLE = 1.7;
/** A table is not begun where fewer rows than this would stand under its head. */
const LEAST_ROWS = 3;
/** Tables wider than half a sheet by no more than this are pressed to the half. */
const NEARLY_HALF = 1.12;
/** Columns that nobody limits are wrapped at this many sizes of the lettering. */
const MOST = 34;

interface Laid {
  readonly table: Table;
  readonly widths: readonly number[];
  readonly width: number;
  readonly lead: readonly LaidLine[];
  readonly head: LaidRow;
  readonly rows: readonly LaidRow[];
  readonly foot: readonly LaidLine[];
}

/**
 * Lays tables out on sheets: one after another down a column of the sheet, which grows to the widest, then in the next
 * column, then on the next sheet; a table that does not end there goes on with its head repeated.
 */
export function flowTables(
  tables: readonly Table[],
  field: Area,
  lettering: Lettering,
  { first, count, most, under = TABLE_GAP }: FlowRoom = { first: field, count: 0, most: field.width },
): readonly TablePage[] {
  const { small, head: headSize } = lettering.sizes;
  const step = small * LEADING;
  const pages: TablePart[][] = [];
  let place = { x: Infinity, y: 0, width: 0 };
  const room = (): Area => (pages.length > count ? field : first);
  const edge = (): number => right(room()) + 0.01;
  const newColumn = (width: number): void => {
    const x = pages.length === 0 ? Infinity : place.x + place.width + TABLE_GAP;
    if (x + width <= edge()) place = { x, y: top(field), width };
    else {
      pages.push([]);
      while (pages.length <= count && first.x + width > edge()) pages.push([]);
      place = { x: room().x, y: top(field), width };
    }
  };
  for (const table of tables) {
    const laid = laidOut(table, pages.length <= count ? Math.min(field.width, most) : field.width, lettering);
    const footHeight = laid.foot.length === 0 ? 0 : laid.foot.length * step + 6;
    let next = 0;
    let isFirst = true;
    while (isFirst || next < laid.rows.length) {
      const { lead } = laid;
      const above = headSize * TITLE + (lead.length === 0 ? 0 : lead.length * step + 4) + laid.head.height;
      const isShort = next + LEAST_ROWS >= laid.rows.length;
      const heightOf = (rows: readonly LaidRow[], foot: number): number =>
        rows.reduce((sum, row) => sum + row.height, above + foot);
      const all = table.isWhole && isFirst ? heightOf(laid.rows, footHeight) : Infinity;
      const least =
        all <= field.height ? all : heightOf(laid.rows.slice(next, next + LEAST_ROWS), isShort ? footHeight : 0);
      // A wider table goes on below where the column can grow to it: a new one would leave the rest of this one empty.
      const isWider = laid.width > place.width + 0.01;
      const canGrow = place.x + laid.width <= edge();
      if (place.x === Infinity || place.y - least < field.y || (isWider && !canGrow)) newColumn(laid.width);
      else if (isWider) place = { ...place, width: laid.width };
      let y = place.y - above;
      const from = next;
      while (next < laid.rows.length) {
        const isLast = next === laid.rows.length - 1;
        const needed = laid.rows[next]!.height + (isLast ? footHeight : 0);
        // A row taller than the sheet is drawn all the same: no room would ever be enough for it.
        if (y - needed < field.y && next > from) break;
        y -= laid.rows[next]!.height;
        next++;
      }
      const isEnd = next >= laid.rows.length;
      if (isEnd) y -= footHeight;
      pages.at(-1)!.push({
        table,
        area: { x: place.x, y, width: laid.width, height: place.y - y },
        widths: laid.widths,
        title: isFirst ? table.title : `${table.title} (continued)`,
        lead,
        head: laid.head,
        rows: laid.rows.slice(from, next),
        foot: isEnd ? laid.foot : [],
      });
      place = { ...place, y: y - under };
      if (!isEnd) place = { ...place, y: field.y };
      isFirst = false;
    }
  }
  return pages;
}

/** Kept, for how many sheets tables take is asked of one way to put them together after another. */
const laidOut = kept(layOut);

/** Height over the head of a part: its title and the lines that lead in. */
export const aboveHead = ({ lead }: TablePart, { sizes }: Lettering): number =>
  sizes.head * TITLE + (lead.length === 0 ? 0 : lead.length * sizes.small * LEADING + 4);

function layOut(table: Table, most: number, lettering: Lettering): Laid {
  const { small } = lettering.sizes;
  const { deltas } = table;
  const widths = widthsOf(table, most, lettering);
  const width = widths.reduce((sum, one) => sum + one, 0);
  const row = (cells: readonly (string | TableCell)[], weight: 'regular' | 'bold', hasDelta = false): LaidRow => {
    const laid = cells.map((cell, i) => {
      const { text, swatches = [] } = typeof cell === 'string' ? { text: cell } : cell;
      const room = widths[i]! - 2 * CELL_PAD - swatchRoom(swatches.length);
      return { lines: wrapped(text, room + 0.01, small, lettering, { most: 12, weight }), swatches };
    });
    const lines = Math.max(1, ...laid.map((cell) => cell.lines.length));
    return { cells: laid, height: lines * small * LEADING + 3.5, hasDelta };
  };
  const paragraph = (lines: readonly string[] = [], marked?: ReadonlySet<number>): readonly LaidLine[] =>
    lines.flatMap((line, i) =>
      wrapped(line, width, small, lettering).map((text, k) => ({ text, hasDelta: k === 0 && marked?.has(i) === true })),
    );
  return {
    table,
    widths,
    width,
    lead: paragraph(table.lead, deltas?.lead),
    head: table.isPlain
      ? { cells: [], height: 0, hasDelta: false }
      : row(
          table.columns.map(({ head }) => head),
          'bold',
        ),
    rows: table.rows.map((cells, i) => row(cells, 'regular', deltas?.rows.has(i))),
    foot: paragraph(table.foot, deltas?.foot),
  };
}

/** Widths of the columns: what their text needs, up to what each may grow to; pressed together where the sheet is narrower. */
function widthsOf(table: Table, most: number, lettering: Lettering): readonly number[] {
  const { small, head } = lettering.sizes;
  const natural = table.columns.map((column, i) => {
    const limit = (column.most ?? MOST) * small;
    let text = Math.max(
      (column.least ?? 0) * small,
      ...column.head.split(' ').map((word) => lettering.width(word, small, 'bold')),
    );
    for (const row of table.rows) {
      const cell = row[i]!;
      const { text: words, swatches = [] } = typeof cell === 'string' ? { text: cell } : cell;
      text = Math.max(text, Math.min(limit, lettering.width(words, small) + swatchRoom(swatches.length)));
    }
    return text + 2 * CELL_PAD;
  });
  const title = lettering.width(`${table.title} (continued)`, head, 'bold');
  const sum = natural.reduce((total, width) => total + width, 0);
  if (table.width !== undefined) return givenWidths(natural, Math.min(most, table.width));
  // A little over half a sheet would leave the other half empty.
  const half = (most - TABLE_GAP) / 2;
  if (sum > half && sum <= NEARLY_HALF * half && title <= half) return pressed(natural, half);
  const wanted = Math.min(most, Math.max(sum, title));
  if (sum <= wanted) {
    // Room that only the title needs goes to the last column.
    return natural.map((width, i) => (i === natural.length - 1 ? width + wanted - sum : width));
  }
  return pressed(natural, most);
}
