import { addTo } from '../../lists/grouping.ts';
import { apart } from '../../plane/distance.ts';
import type { Aisle, Column, Gridlines, Keepout, Point2, Raceway, Stall } from '../site.ts';
import type { DrawnWords, ImportedLine } from './imported.ts';
import { columnFromShape } from './striping/columns.ts';
import { drawnAlong } from './striping/drawn-along.ts';
import { gridlinesOf } from './striping/gridlines.ts';
import { atHeading, headed, quarter } from './striping/heads.ts';
import { joinedLines } from './striping/joined.ts';
import { stripePieces } from './striping/pieces.ts';
import { cleaned, fourSided, type StallShape, stallShape } from './striping/shapes.ts';
import { labelledStalls, type PlacedWords, placedWords } from './striping/stall-labels.ts';
import { stallsBetween } from './striping/stripes.ts';

/** What lines of a drawing can be turned into. */
export const TURN_KINDS = ['stalls', 'columns', 'keepouts', 'aisles', 'raceways', 'gridlines'] as const;
export type TurnKind = (typeof TURN_KINDS)[number];

type Bare<T> = Omit<T, 'id'>;

/** Elements without their ids, lengths in feet, and the lines that did not fit. */
export interface Turned {
  readonly stalls: readonly Bare<Stall>[];
  readonly columns: readonly Bare<Column>[];
  readonly keepouts: readonly Bare<Keepout>[];
  readonly aisles: readonly Bare<Aisle>[];
  readonly raceways: readonly Bare<Raceway>[];
  readonly gridlines: Gridlines | null;
  readonly rest: readonly ImportedLine[];
}

/** What of a drawing, beside its lines, tells what they are; feet, on the site. */
export interface Beside {
  readonly words?: readonly DrawnWords[];
  /** Half of the last digit of its coordinates. */
  readonly rounding?: number;
}

const NOTHING: Turned = { stalls: [], columns: [], keepouts: [], aisles: [], raceways: [], gridlines: null, rest: [] };

/**
 * The elements that lines come to. Outlines and stripes of a stall's sides become stalls, numbered by the words inside
 * them; small closed shapes columns; closed shapes keep-outs and aisles; open ones raceways at an elevation; long lines
 * with bubbles gridlines. Lines whose ends meet count as one, and one that comes back to its start as closed. Where
 * nothing tells which end of a stall is its head, stalls head away from what lies before them: `flip` turns all of them.
 */
export function turnedInto(
  kind: TurnKind,
  lines: readonly ImportedLine[],
  elevation: number,
  flip: boolean,
  { words = [], rounding = 0 }: Beside = {},
): Turned {
  const clean = lines.map(cleaned);
  switch (kind) {
    case 'stalls':
      return { ...NOTHING, ...stallsOf(clean, flip, words.map(placedWords), rounding) };
    case 'gridlines': {
      const found = gridlinesOf(clean, words.map(placedWords));
      return { ...NOTHING, gridlines: found?.gridlines ?? null, rest: clean.filter((_, i) => !found?.of.has(i)) };
    }
    case 'raceways':
      return {
        ...NOTHING,
        raceways: clean.filter(isLine).map((line) => racewayOf(line, elevation)),
        rest: clean.filter((line) => !isLine(line)),
      };
    default: {
      const joined = joinedLines(clean, rounding);
      const made = joined.map((line) => ({ line, as: line.closed ? closedInto(kind, line.points, rounding) : null }));
      return {
        ...NOTHING,
        [kind]: made.flatMap(({ as }) => (as ? [as] : [])),
        rest: made.flatMap(({ line, as }) => (as ? [] : [line])),
      };
    }
  }
}

const isLine = ({ points }: ImportedLine): boolean => points.length >= 2;

function closedInto(
  kind: 'columns' | 'keepouts' | 'aisles',
  points: readonly Point2[],
  rounding: number,
): Bare<Column> | Bare<Keepout> | Bare<Aisle> | null {
  if (kind === 'columns') return columnFromShape(points, rounding);
  if (points.length < 3) return null;
  return kind === 'aisles' ? { outline: points } : { outline: points, blocks: ['raceway', 'drop', 'equipment'] };
}

/** Rounding over this, feet, shows: what is drawn alike is then made alike. */
const SHOWS = 0.05;
/** Stalls nearer than this to one another, middle to middle, feet, are one that is drawn twice. */
const TWICE = 2;

function stallsOf(
  lines: readonly ImportedLine[],
  flip: boolean,
  words: readonly PlacedWords[],
  rounding: number,
): Pick<Turned, 'stalls' | 'rest'> {
  const shapes = lines.map(({ points, closed }) => {
    const figure = closed ? fourSided(points, rounding) : null;
    return figure && stallShape(figure, rounding);
  });
  const others = lines.filter((_, i) => shapes[i] === null);
  const striped = stallsBetween(stripePieces(others), rounding);
  const used = new Set(striped.flatMap(({ of }) => of));
  const found = once([
    ...shapes.filter((shape) => shape !== null).map((shape) => ({ ...shape, ahead: null as boolean | null })),
    ...striped,
  ]);
  const alike = rounding > SHOWS ? madeAlike(found) : found;
  const bare = alike.map(({ middle, width, depth, degrees, ahead }) => ({
    stall: atHeading(middle, width, depth, quarter(ahead === false ? degrees + 180 : degrees)),
    sure: ahead !== null,
  }));
  const stalls = headed(
    bare.map(({ stall }) => stall),
    flip,
    bare.map(({ sure }) => sure),
  );
  const told = drawnAlong(
    stalls,
    others.filter((_, i) => used.has(i)),
  );
  return { stalls: labelledStalls(stalls, words), rest: others.filter((line, i) => !used.has(i) && !told(line)) };
}

type FoundStall = StallShape & { readonly ahead: boolean | null };

/** Without those that are found both by their outline and by stripes. */
function once(stalls: readonly FoundStall[]): readonly FoundStall[] {
  const cells = new Map<string, Point2[]>();
  const cellOf = ([x, y]: Point2, dx = 0, dy = 0): string =>
    `${Math.floor(x / TWICE) + dx} ${Math.floor(y / TWICE) + dy}`;
  return stalls.filter(({ middle }) => {
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        if (cells.get(cellOf(middle, dx, dy))?.some((at) => apart(at, middle) < TWICE)) return false;
    addTo(cells, cellOf(middle), middle);
    return true;
  });
}

/** Directions nearer than this, degrees, are one that rounding spread. */
const ONE_WAY = 12;

/** Stalls of one size and, where they stand alike, one direction: the middle of what rounding made of them. */
function madeAlike(stalls: readonly FoundStall[]): readonly FoundStall[] {
  const [width, depth] = [median(stalls.map((each) => each.width)), median(stalls.map((each) => each.depth))];
  const off = (a: number, b: number): number => ((((a - b + 90) % 180) + 180) % 180) - 90;
  const ways: { readonly degrees: number; readonly of: number[] }[] = [];
  for (const { degrees } of stalls) {
    const way = ways.find((each) => Math.abs(off(degrees, each.degrees)) < ONE_WAY);
    if (way) way.of.push(off(degrees, way.degrees));
    else ways.push({ degrees, of: [0] });
  }
  return stalls.map((stall) => {
    const way = ways.find((each) => Math.abs(off(stall.degrees, each.degrees)) < ONE_WAY)!;
    const turn = way.degrees + way.of.reduce((sum, each) => sum + each, 0) / way.of.length;
    // Along the way, or the very other: as the stall itself points.
    return { ...stall, width, depth, degrees: stall.degrees + off(turn, stall.degrees) };
  });
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

const racewayOf = ({ points, closed }: ImportedLine, z: number): Bare<Raceway> => ({
  path: (closed ? [...points, points[0]!] : points).map(([x, y]) => [x, y, z] as const),
  method: 'EMT',
  place: z < 0 ? 'underground' : 'overhead',
});
