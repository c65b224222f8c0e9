import { isHeld, type Steel } from '../../../network/support/steel-near.ts';
import { boxOf, widened } from '../../../plane/box.ts';
import { insideOf } from '../../../plane/obstacle.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import { outlineOf, stallOutline } from '../../../standing/outlines.ts';
import { BESIDE, BEYOND, type LatticeLines, linesAt } from './lines.ts';
import type { LotFrame } from './lot-frame.ts';

/** A column of no stated height goes up to its steel; a lower one than this, feet, is a bollard or a foot. */
const LOW = 8;

/** What comes up out of the ground is of the kind that lies there up to this height, feet: out of reach of wheels. Common practice, no source. */
export const OUT_OF_GROUND = 2;

/** Where what lies in the ground may come up to what hangs. */
export interface Risers {
  readonly at: readonly Point2[];
  /** They stand at columns; else under the ends of members, where no column is drawn. */
  readonly areColumns: boolean;
}

/**
 * Where a conduit comes up out of the ground to the steel: at the columns under it; of a canopy that is drawn without any,
 * under the ends of its members, clear of stalls and aisles. In the plan, feet.
 */
export function risersOf({ columns, members, stalls, aisles, rules }: Site, steel: Steel): Risers {
  const up = columns.filter(
    ({ at: [x, y], height = LOW }) => height >= LOW && isHeld(steel, [x, y, 0], rules.hangReach),
  );
  if (up.length > 0) return { at: up.map(({ at: [x, y] }) => [x, y]), areColumns: true };
  const shut = [...stalls.map(stallOutline), ...aisles.map(outlineOf)];
  const ends = new Map<string, Point2>();
  for (const { from, to } of members)
    for (const [x, y] of [from, to])
      if (!shut.some((outline) => insideOf(outline, x, y))) ends.set(`${Math.round(x)} ${Math.round(y)}`, [x, y]);
  return { at: [...ends.values()], areColumns: false };
}

/** More nodes than these in the ground would keep the search for routes too long. */
const MOST_NODES = 500;

/** Lines of both ways along which a trench may be dug from an entry to where it comes up: through these, and beside keep-outs. */
export function groundLines(
  site: Site,
  frame: LotFrame,
  entry: Point3,
  boxes: readonly Point3[],
  risers: readonly Point2[],
): { readonly u: LatticeLines; readonly v: LatticeLines; readonly risers: readonly Point2[] } {
  const flat = (at: readonly number[]): Point2 => frame.into([at[0]!, at[1]!]);
  const near = widened(boxOf([entry, ...boxes].map(flat)), BEYOND);
  const isNear = ([u, v]: Point2): boolean => u >= near.minX && u <= near.maxX && v >= near.minY && v <= near.maxY;
  const own = risers.filter((at) => isNear(flat(at)));
  const shut = site.keepouts.filter(({ blocks }) => blocks.includes('raceway'));
  const beside = shut.flatMap(({ outline }): Point2[] => {
    const { minX, minY, maxX, maxY } = widened(boxOf(outline.map(flat)), BESIDE);
    return [
      [minX, minY],
      [maxX, maxY],
    ];
  });
  const buried = site.raceways.flatMap(({ path, place }) => (place === 'underground' ? path.map(flat) : []));
  const on = [flat(entry), ...own.map(flat), ...[...buried, ...beside].filter(isNear)];
  for (let apart = TRENCH; ; apart *= 1.5) {
    const [u, v] = [on.map(([a]) => a), on.map(([, b]) => b)].map((values) => linesAt(values, apart)) as [
      LatticeLines,
      LatticeLines,
    ];
    if (u.at.length * v.at.length <= MOST_NODES || apart > 1000) return { u, v, risers: own };
  }
}

/** Nearer to each other than this, feet, they would be one trench. */
const TRENCH = 1;

/** A straight with what else belongs to it. */
type Straight<Rest> = readonly [a: Point3, b: Point3, rest: Rest];

/** What comes up out of the ground to a box or an entry that is higher, in two: the lower part is of what lies there. */
export function outOfGround<Rest>(straight: Straight<Rest>): readonly Straight<Rest>[] {
  const [a, b, rest] = straight;
  const [low, high] = a[2] < b[2] ? [a, b] : [b, a];
  if (low[2] >= 0 || high[2] <= OUT_OF_GROUND) return [straight];
  const at: Point3 = [high[0], high[1], OUT_OF_GROUND];
  return [
    [low, at, rest],
    [at, high, rest],
  ];
}
