import { kept } from '../../../kept/kept.ts';
import { direction } from '../../../plane/direction.ts';
import type { Point2, Site } from '../../../site/site.ts';
import { rowsOf } from '../../rows/rows-of.ts';

/** The way a lot lies: raceways go along it and square to it. */
export interface LotFrame {
  /** A place of the site in the frame, feet. */
  readonly into: (at: Point2) => Point2;
  /** And back; to a ten-thousandth of a foot where the lot is turned. */
  readonly outOf: (at: Point2) => Point2;
  /** How far it is turned, degrees counter-clockwise, from 0 up to 90. */
  readonly turn: number;
}

/** Nearer to square than this, degrees, a lot is square. */
const SQUARE = 0.01;

/**
 * The frame of a site: that of its gridlines where it has any, else of its steel (the way in which most feet of it lie),
 * else of the rows in which most stalls stand, whichever is drawn first.
 */
export const lotFrame = (site: Site): LotFrame => frameOf(frameDegrees(site));

/** A frame turned by so many degrees. */
export function frameOf(turn: number): LotFrame {
  if (turn === 0) return { into: (at) => at, outOf: (at) => at, turn };
  const [c, s] = direction(turn);
  const round = (value: number): number => Math.round(value * 1e4) / 1e4;
  return {
    into: ([x, y]) => [x * c + y * s, y * c - x * s],
    outOf: ([u, v]) => [round(u * c - v * s), round(u * s + v * c)],
    turn,
  };
}

const frameDegrees = (site: Site): number => quarter(degreesOf(site));

/** From 0 up to 90: a quarter turn leaves the frame as it is. */
function quarter(degrees: number): number {
  const turn = ((degrees % 90) + 90) % 90;
  return turn < SQUARE || turn > 90 - SQUARE ? 0 : turn;
}

const hundredths = (degrees: number): number => Math.round(degrees * 100) / 100;

function degreesOf({ gridlines, members, stalls }: Site): number {
  if (gridlines.x.length + gridlines.y.length > 0) return gridlines.rotation ?? 0;
  const ways = members.map(({ from, to }) => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return { way: quarter((Math.atan2(dy, dx) * 180) / Math.PI), feet: Math.hypot(dx, dy) };
  });
  const feet = new Map<number, number>();
  for (const one of ways) feet.set(hundredths(one.way), (feet.get(hundredths(one.way)) ?? 0) + one.feet);
  const [longest] = [...feet].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  if (longest) {
    // What is drawn to a ten-thousandth of a foot lies all but in one way: the middle of these.
    const own = ways.filter(({ way }) => Math.abs(way - longest[0]) < SQUARE);
    const all = own.reduce((sum, one) => sum + one.feet, 0);
    return own.reduce((sum, one) => sum + one.way * (one.feet / all), 0);
  }
  return rowsDegrees(stalls);
}

/** The way of the rows in which most stalls stand. */
const rowsDegrees = kept((stalls: Site['stalls']): number => {
  const at = new Map(stalls.map((stall) => [stall.id, stall]));
  const most = new Map<number, { count: number; degrees: number }>();
  for (const row of rowsOf(stalls)) {
    const [first, last] = [at.get(row[0]!)!, at.get(row.at(-1)!)!];
    const [dx, dy] = [last.at[0] - first.at[0], last.at[1] - first.at[1]];
    const degrees = quarter(first === last ? first.heading : (Math.atan2(dy, dx) * 180) / Math.PI);
    const known = most.get(hundredths(degrees)) ?? { count: 0, degrees };
    most.set(hundredths(degrees), { ...known, count: known.count + row.length });
  }
  const [best] = [...most.values()].sort((a, b) => b.count - a.count || a.degrees - b.degrees);
  return best?.degrees ?? 0;
});
