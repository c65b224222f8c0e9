import { type Box, boxesMeet, boxOf, widened } from '../../../plane/box.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import type { LotFrame } from './lot-frame.ts';

/** Lines nearer than this, feet, would be one raceway's hangers in the way of another's. */
export const APART = 0.5;

/** Lines of a lattice at values in order, none nearer to another than `apart`. */
export interface LatticeLines {
  readonly at: readonly number[];
  readonly apart: number;
}

/** More nodes than these would keep the search for routes too long: lines that lie near one another become one. */
const MOST_NODES = 4000;

/** Lines at some values, the first of several that lie near one another being kept. */
export function linesAt(values: readonly number[], apart: number): LatticeLines {
  const kept: number[] = [];
  for (const value of values) if (kept.every((other) => Math.abs(other - value) >= apart)) kept.push(value);
  return { at: kept.sort((a, b) => a - b), apart };
}

/** Beside a keep-out, feet. */
export const BESIDE = 1;
/** What lies farther than this beyond the boxes and the entry, feet, has no line of its own. */
export const BEYOND = 30;

/**
 * The lines of both ways of a lot along which raceways to some boxes may lie: through the entry, the vertices of raceways
 * that are there, the boxes and the columns, beside keep-outs, and along steel; farther apart the more there would be. Feet, in the
 * frame of the lot.
 */
export function lotLines(
  site: Site,
  frame: LotFrame,
  entry: Point3,
  boxes: readonly Point3[],
): { readonly u: LatticeLines; readonly v: LatticeLines } {
  const flat = (at: readonly number[]): Point2 => frame.into([at[0]!, at[1]!]);
  const near = widened(boxOf([entry, ...boxes].map(flat)), BEYOND);
  const keepouts = site.keepouts.filter(({ blocks }) => blocks.includes('raceway'));
  const beside = keepouts.flatMap(({ outline }): Point2[] => {
    const { minX, minY, maxX, maxY } = widened(boxOf(outline.map(flat)), BESIDE);
    return [
      [minX, minY],
      [maxX, maxY],
    ];
  });
  const standing = [...site.raceways.flatMap(({ path }) => path), ...boxes, ...site.columns.map(({ at }) => at)];
  const on = [flat(entry), ...standing.map(flat), ...beside].filter(
    ([u, v]) => u >= near.minX && u <= near.maxX && v >= near.minY && v <= near.maxY,
  );
  const us = on.map(([u]) => u);
  const vs = on.map(([, v]) => v);
  for (let apart = APART; ; apart *= 1.5) {
    const [u, v] = [linesAt(us, apart), linesAt(vs, apart)];
    if (u.at.length * v.at.length > MOST_NODES && apart <= 1000) continue;
    const along = steelLines(site, flat, near);
    const [steelU, steelV] = [alsoAlong(u, along.u, site), alsoAlong(v, along.v, site)];
    return steelU.at.length * steelV.at.length <= MOST_NODES ? { u: steelU, v: steelV } : { u, v };
  }
}

/** Steel shorter than this, feet, no raceway follows. */
const LONG = 10;
/** Steel that goes no farther aside than this over its length, feet, lies along the lot. */
const ASIDE = 0.5;

/** Where steel lies along the lot, one way and the other. */
function steelLines(
  { members }: Site,
  flat: (at: readonly number[]) => Point2,
  near: Box,
): { readonly u: readonly number[]; readonly v: readonly number[] } {
  const lines: { u: number[]; v: number[] } = { u: [], v: [] };
  for (const { from, to } of members) {
    const [[au, av], [bu, bv]] = [flat(from), flat(to)];
    if (Math.hypot(bu - au, bv - av) < LONG || !boxesMeet(near, boxOf([flat(from), flat(to)]))) continue;
    if (Math.abs(bu - au) <= ASIDE) lines.u.push((au + bu) / 2);
    else if (Math.abs(bv - av) <= ASIDE) lines.v.push((av + bv) / 2);
  }
  return lines;
}

/** Lines along steel too, where none lies so near to it already that it hangs from it. */
function alsoAlong(
  { at, apart }: LatticeLines,
  steel: readonly number[],
  { rules: { hangReach } }: Site,
): LatticeLines {
  const fresh: number[] = [];
  for (const value of steel)
    if ([...at, ...fresh].every((other) => Math.abs(other - value) > Math.max(hangReach, apart))) fresh.push(value);
  return fresh.length === 0 ? { at, apart } : linesAt([...at, ...fresh], apart);
}

/** Place of the line nearest to a value. RangeError where there is none. */
export function nearestLine({ at }: LatticeLines, value: number): number {
  if (at.length === 0) throw new RangeError('no lines');
  let best = 0;
  at.forEach((line, i) => {
    if (Math.abs(line - value) < Math.abs(at[best]! - value)) best = i;
  });
  return best;
}
