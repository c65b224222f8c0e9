import { direction } from '../../../../routing/plane/direction.ts';
import type { DrawnWords, ImportedLine } from '../../../../routing/site/import/imported.ts';
import type { Point2 } from '../../../../routing/site/site.ts';

/** A stall as it was meant: its middle, the way to its head, its sides and its number. */
export interface Meant {
  readonly middle: Point2;
  readonly heading: number;
  readonly width: number;
  readonly depth: number;
  readonly label?: string;
}

export interface MadeLot {
  readonly name: string;
  readonly lines: readonly ImportedLine[];
  readonly words: readonly DrawnWords[];
  readonly meant: readonly Meant[];
}

/** A row: where its first entry corner stands, the way along it, and the way from entry to head, degrees. */
interface Row {
  readonly at: Point2;
  readonly along: number;
  readonly into: number;
  readonly count: number;
  readonly width?: number;
  readonly depth?: number;
  readonly first?: number;
}

const moved = ([x, y]: Point2, degrees: number, by: number): Point2 => {
  const [ux, uy] = direction(degrees);
  return [x + ux * by, y + uy * by];
};

/** Entry and head of each stripe of a row, one more than it has stalls; `width` is square to the stripes. */
function stripes({ at, along, into, count, width = 9, depth = 18 }: Row): readonly (readonly [Point2, Point2])[] {
  const step = width / Math.abs(Math.sin(((into - along) * Math.PI) / 180));
  return Array.from({ length: count + 1 }, (_, i) => {
    const entry = moved(at, along, i * step);
    return [entry, moved(entry, into, depth)] as const;
  });
}

function meantOf(row: Row): readonly Meant[] {
  const all = stripes(row);
  const { into, width = 9, depth = 18, first } = row;
  return all.slice(1).map(([c, d], i) => {
    const [a, b] = all[i]!;
    const middle: Point2 = [(a[0] + b[0] + c[0] + d[0]) / 4, (a[1] + b[1] + c[1] + d[1]) / 4];
    const heading = ((into % 360) + 360) % 360;
    return { middle, heading, width, depth, ...(first !== undefined && { label: `${first + i}` }) };
  });
}

const open = (...points: readonly Point2[]): ImportedLine => ({ layer: 'STRIPE', points, closed: false });
const shut = (...points: readonly Point2[]): ImportedLine => ({ layer: 'STRIPE', points, closed: true });
const singles = (row: Row): readonly ImportedLine[] => stripes(row).map(([entry, head]) => open(entry, head));
const headLine = (row: Row): ImportedLine => open(stripes(row)[0]![1], stripes(row).at(-1)![1]);
const perStall = (
  row: Row,
  draw: (a: Point2, b: Point2, c: Point2, d: Point2) => readonly ImportedLine[],
): readonly ImportedLine[] =>
  stripes(row)
    .slice(1)
    .flatMap(([c, d], i) => draw(...stripes(row)[i]!, d, c));
const numbers = (row: Row): readonly DrawnWords[] =>
  meantOf(row).map(({ middle, label = '' }) => ({
    layer: 'NO',
    at: middle,
    height: 1,
    turn: 0,
    anchor: 'middle',
    words: label,
  }));

const made = (
  name: string,
  rows: readonly Row[],
  draw: (row: Row) => readonly ImportedLine[],
  words: readonly DrawnWords[] = [],
): MadeLot => ({
  name,
  lines: rows.flatMap(draw),
  words,
  meant: rows.flatMap(meantOf),
});

const facing: readonly Row[] = [
  { at: [0, 18], along: 0, into: 270, count: 10 },
  { at: [0, 42], along: 0, into: 90, count: 10 },
];
const square: Row = { at: [0, 0], along: 0, into: 90, count: 10 };
const turnedRow: Row = { at: [5200, -310], along: 23, into: 113, count: 12, width: 8.5, depth: 19, first: 101 };
const slanted: Row = { at: [0, 0], along: 0, into: 60, count: 10 };
const backToBack: readonly Row[] = [
  { at: [0, 0], along: 0, into: 90, count: 8 },
  { at: [0, 36], along: 0, into: 270, count: 8 },
];

/** Twelve lots striped in the ways in which people draw them. */
export const MADE_LOTS: readonly MadeLot[] = [
  made('closed outlines on two sides of an aisle', facing, (row) => perStall(row, (a, b, c, d) => [shut(a, b, c, d)])),
  made('single stripes with a head line', [square], (row) => [...singles(row), headLine(row)]),
  made('single stripes without a head line, on two sides of an aisle', facing, singles),
  made('three sides of each stall', [square], (row) => perStall(row, (a, b, c, d) => [open(a, b, c, d)])),
  made('four lines to each stall', facing, (row) =>
    perStall(row, (a, b, c, d) => [open(a, b), open(b, c), open(c, d), open(d, a)]),
  ),
  made(
    'slanted outlines',
    [
      { at: [0, 20], along: 0, into: 240, count: 10 },
      { at: [0, 44], along: 0, into: 60, count: 10 },
    ],
    (row) => perStall(row, (a, b, c, d) => [shut(a, b, c, d)]),
  ),
  made('slanted stripes with a head line', [slanted], (row) => [...singles(row), headLine(row)]),
  made('one line that returns along every stripe', [square], (row) => {
    const [[entry], ...others] = [stripes(row)[0]!, ...stripes(row).slice(1)];
    return [open(entry, stripes(row)[0]![1], ...others.flatMap(([low, high]) => [high, low, high]))];
  }),
  made('stripes through two rows, cut by their head line', backToBack, (row) =>
    row.into === 90 ? [...stripes(row).map(([low, high]) => open(low, moved(high, 90, 18))), headLine(row)] : [],
  ),
  made('doubled stripes', [{ ...square, width: 10 }], (row) => [
    ...stripes(row).flatMap(([low, high]) => [
      open(moved(low, 0, -0.75), moved(high, 0, -0.75)),
      open(moved(low, 0, 0.75), moved(high, 0, 0.75)),
    ]),
    headLine(row),
  ]),
  made('a turned lot with its numbers', [turnedRow], (row) => [...singles(row), headLine(row)], numbers(turnedRow)),
  made(
    'accessible stalls with an aisle between them, at 45 degrees beyond',
    [
      { ...square, count: 1 },
      { at: [14, 0], along: 0, into: 90, count: 1 },
      { at: [100, 0], along: 0, into: 45, count: 6, width: 9.5, depth: 20 },
    ],
    (row) => [
      ...singles(row),
      headLine(row),
      ...(row.at[0] === 14 ? [1, 2, 3, 4, 5, 6].map((i) => open([9, 2 * i], [14, 2 * i + 5])) : []),
    ],
  ),
];
