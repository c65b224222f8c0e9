import { addTo } from '../../lists/grouping.ts';
import { direction } from '../../plane/direction.ts';
import { apart } from '../../plane/distance.ts';
import type { Aisle, Column, Keepout, Point2, Raceway, Stall } from '../site.ts';
import type { DrawnLine } from './imported.ts';

/** What lines of a drawing can be turned into. */
export const TURN_KINDS = ['stalls', 'columns', 'keepouts', 'aisles', 'raceways'] as const;
export type TurnKind = (typeof TURN_KINDS)[number];

type Bare<T> = Omit<T, 'id'>;

/** Elements without their ids, lengths in feet, and how many lines did not fit. */
export interface Turned {
  readonly stalls: readonly Bare<Stall>[];
  readonly columns: readonly Bare<Column>[];
  readonly keepouts: readonly Bare<Keepout>[];
  readonly aisles: readonly Bare<Aisle>[];
  readonly raceways: readonly Bare<Raceway>[];
  readonly leftOut: number;
}

/** A rectangle by its middle, its sides and the direction of the first, degrees. */
interface Rectangle {
  readonly middle: Point2;
  readonly along: number;
  readonly across: number;
  readonly degrees: number;
}

/** Sides of stalls that lots are striped with: compact to van, parallel included. Feet. */
const STALL_WIDTH = [7, 13] as const;
const STALL_DEPTH = [14, 24] as const;
/** Sides of a canopy column, feet. */
const COLUMN_SIDE = [0.2, 6] as const;
/** Corners of a rectangle may be off a right angle by this share of its sides. */
const ASKEW = 0.03;
/** Points nearer than this, feet, are one. */
const SAME = 0.02;

/**
 * The elements that lines come to. Rectangles of a stall's sides become stalls, small closed shapes columns, closed
 * shapes keep-outs and aisles, open ones raceways at an elevation. A line that comes back to its start counts as closed.
 * Stalls head away from what lies before them: `flip` turns all of them round.
 */
export function turnedInto(kind: TurnKind, lines: readonly DrawnLine[], elevation: number, flip: boolean): Turned {
  const made = { stalls: [], columns: [], keepouts: [], aisles: [], raceways: [] } as {
    [K in TurnKind]: Turned[K][number][];
  };
  let leftOut = 0;
  for (const line of lines.map(cleaned)) {
    const { points, closed } = line;
    const rectangle = closed ? rectangleOf(points) : null;
    if (kind === 'stalls' && rectangle && isStall(rectangle)) made.stalls.push(stallOf(rectangle));
    else if (kind === 'columns' && closed && columnOf(points, rectangle))
      made.columns.push(columnOf(points, rectangle)!);
    else if (kind === 'keepouts' && closed && points.length >= 3)
      made.keepouts.push({ outline: points, blocks: ['raceway', 'drop', 'equipment'] });
    else if (kind === 'aisles' && closed && points.length >= 3) made.aisles.push({ outline: points });
    else if (kind === 'raceways' && points.length >= 2) made.raceways.push(racewayOf(line, elevation));
    else leftOut += 1;
  }
  return { ...made, stalls: headed(made.stalls, flip), leftOut };
}

/** Without points that repeat the one before, and closed where it comes back to its start. */
function cleaned({ layer, points, closed }: DrawnLine): DrawnLine {
  const own = points.filter((at, i) => i === 0 || apart(at, points[i - 1]!) > SAME);
  const back = own.length > 2 && apart(own[0]!, own.at(-1)!) <= SAME;
  return { layer, points: back ? own.slice(0, -1) : own, closed: closed || back };
}

/** Without corners that lie on the line between their neighbours. */
function cornersOf(points: readonly Point2[]): readonly Point2[] {
  return points.filter((at, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    const after = points[(i + 1) % points.length]!;
    const cross = (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0]);
    return Math.abs(cross) > 1e-3 * apart(before, at) * apart(at, after);
  });
}

function rectangleOf(points: readonly Point2[]): Rectangle | null {
  const corners = cornersOf(points);
  if (corners.length !== 4) return null;
  const [a, b, c, d] = corners as readonly [Point2, Point2, Point2, Point2];
  const along = apart(a, b);
  const across = apart(b, c);
  const off = Math.hypot(a[0] - b[0] + c[0] - d[0], a[1] - b[1] + c[1] - d[1]);
  const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  if (off > ASKEW * Math.min(along, across) || Math.abs(dot) > ASKEW * along * across) return null;
  return {
    middle: [(a[0] + b[0] + c[0] + d[0]) / 4, (a[1] + b[1] + c[1] + d[1]) / 4],
    along,
    across,
    degrees: (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI,
  };
}

const within = (value: number, [least, most]: readonly [number, number]): boolean => value >= least && value <= most;

const isStall = ({ along, across }: Rectangle): boolean =>
  within(Math.min(along, across), STALL_WIDTH) && within(Math.max(along, across), STALL_DEPTH);

function stallOf({ middle, along, across, degrees }: Rectangle): Bare<Stall> {
  const heading = quarter(along >= across ? degrees : degrees + 90);
  return atHeading(middle, Math.min(along, across), Math.max(along, across), heading);
}

/** A stall about its middle. */
function atHeading(middle: Point2, width: number, depth: number, heading: number): Bare<Stall> {
  const [ux, uy] = direction(heading);
  return { at: [middle[0] - (ux * depth) / 2, middle[1] - (uy * depth) / 2], width, depth, heading };
}

/** A direction from 0 up to 360, whole where it is as good as whole. */
function quarter(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  const whole = Math.round(turned);
  return Math.abs(turned - whole) < 1e-6 ? whole % 360 : turned;
}

const middleOf = ({ at, depth, heading }: Bare<Stall>): Point2 => {
  const [ux, uy] = direction(heading);
  return [at[0] + (ux * depth) / 2, at[1] + (uy * depth) / 2];
};

/** Ends of stalls nearer than this, feet, are one place. */
const HEAD_TO_HEAD = 1;

/**
 * Of a rectangle one cannot see which end is the entry. Stalls that stand head to head share that end; the others are
 * taken to head away from the middle of all, where the aisle is.
 */
function headed(stalls: readonly Bare<Stall>[], flip: boolean): readonly Bare<Stall>[] {
  const middles = stalls.map(middleOf);
  const [mx, my] = meanOf(middles);
  const shared = sharedEnds(stalls);
  return stalls.map((stall, i) => {
    const middle = middles[i]!;
    const ahead = shared(i, headOf(stall));
    const behind = shared(i, stall.at);
    const [ux, uy] = direction(stall.heading);
    const outward = (middle[0] - mx) * ux + (middle[1] - my) * uy >= -HEAD_TO_HEAD;
    const keeps = ahead === behind ? outward : ahead;
    return keeps !== flip ? stall : atHeading(middle, stall.width, stall.depth, quarter(stall.heading + 180));
  });
}

/** Tells whether another stall than the i-th has an end at a place. */
function sharedEnds(stalls: readonly Bare<Stall>[]): (i: number, at: Point2) => boolean {
  const ends = new Map<string, { readonly i: number; readonly at: Point2 }[]>();
  const cell = (value: number): number => Math.floor(value / HEAD_TO_HEAD);
  stalls.forEach((stall, i) => {
    for (const at of [stall.at, headOf(stall)]) {
      const key = `${cell(at[0])} ${cell(at[1])}`;
      addTo(ends, key, { i, at });
    }
  });
  return (i, at) => {
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const end of ends.get(`${cell(at[0]) + dx} ${cell(at[1]) + dy}`) ?? [])
          if (end.i !== i && apart(end.at, at) < HEAD_TO_HEAD) return true;
    return false;
  };
}

const headOf = ({ at, depth, heading }: Bare<Stall>): Point2 => {
  const [ux, uy] = direction(heading);
  return [at[0] + ux * depth, at[1] + uy * depth];
};

const meanOf = (points: readonly Point2[]): Point2 => [
  points.reduce((sum, [x]) => sum + x, 0) / (points.length || 1),
  points.reduce((sum, [, y]) => sum + y, 0) / (points.length || 1),
];

/** A column from a rectangle, or from a round shape as the square about it. */
function columnOf(points: readonly Point2[], rectangle: Rectangle | null): Bare<Column> | null {
  if (rectangle) {
    const { middle, along, across, degrees } = rectangle;
    if (!within(along, COLUMN_SIDE) || !within(across, COLUMN_SIDE)) return null;
    const rotation = quarter(degrees) % 180;
    return { at: middle, size: [along, across], ...(rotation === 0 ? {} : { rotation }) };
  }
  if (points.length < 6) return null;
  const middle = meanOf(points);
  const radii = points.map((point) => apart(point, middle));
  const [least, most] = [Math.min(...radii), Math.max(...radii)];
  if (most - least > 0.05 * most || !within(2 * most, COLUMN_SIDE)) return null;
  return { at: middle, size: [2 * most, 2 * most] };
}

const racewayOf = ({ points, closed }: DrawnLine, z: number): Bare<Raceway> => ({
  path: (closed ? [...points, points[0]!] : points).map(([x, y]) => [x, y, z] as const),
  method: 'EMT',
  place: z < 0 ? 'underground' : 'overhead',
});
