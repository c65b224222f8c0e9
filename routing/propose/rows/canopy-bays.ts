import type { Point2, Point3 } from '../../site/site.ts';
import { rowFrame, type Side } from './row-frame.ts';

/** What a canopy's frame is like. Lengths in feet, elevations above grade. */
export interface CanopyShape {
  /** From one column to the next along the line. */
  readonly spacing: number;
  /** One line of columns with beams to both sides, or two. */
  readonly columnLines: 1 | 2;
  /** From the first line of columns to the second. */
  readonly lineGap: number;
  /** How far beams go past the outermost columns, across. */
  readonly overhang: number;
  /** How far purlins go past the outermost columns, along. */
  readonly endOverhang: number;
  /** Side of columns, which are square. */
  readonly columnSize: number;
  readonly beamElevation: number;
  readonly purlinElevation: number;
  /** Most that purlins lie apart; 0 draws none. */
  readonly purlinSpacing: number;
  /** On which side of the drawn line the second line of columns stands. */
  readonly side: Side;
}

export interface CanopyBays {
  readonly bays: number;
  readonly columns: readonly { readonly at: Point2; readonly rotation: number }[];
  readonly beams: readonly { readonly from: Point3; readonly to: Point3 }[];
  readonly purlins: readonly { readonly from: Point3; readonly to: Point3 }[];
  /** Reference lines through the columns, where the canopy lies square to the axes; empty on a slanting one. */
  readonly lines: {
    readonly along: readonly number[];
    readonly across: readonly number[];
    readonly numbered: 'x' | 'y';
  } | null;
}

export const MAX_BAYS = 200;

/** Bays on a line of a length: the number of whole spacings that comes nearest to it, at least one. */
export const baysOn = (length: number, spacing: number): number =>
  Math.min(MAX_BAYS, Math.max(1, Math.round(length / spacing)));

/**
 * A canopy of so many bays along a line: columns, a beam over each, purlins on the beams. Purlins divide the width
 * evenly. RangeError where the line has no length, or a measure that must be over 0 is not.
 */
export function canopyBays(from: Point2, to: Point2, bays: number, shape: CanopyShape): CanopyBays {
  if (!(Number.isInteger(bays) && bays >= 1 && bays <= MAX_BAYS)) throw new RangeError(`no canopy of ${bays} bays`);
  const { spacing, columnLines, lineGap, overhang, endOverhang, columnSize, beamElevation, purlinElevation } = shape;
  if (!(spacing > 0 && columnSize > 0 && overhang >= 0 && endOverhang >= 0 && (columnLines === 1 || lineGap > 0)))
    throw new RangeError('a canopy needs a spacing and columns of some size');
  const frame = rowFrame(from, to, shape.side);
  const across = columnLines === 1 ? [0] : [0, lineGap];
  const along = Array.from({ length: bays + 1 }, (_, i) => i * spacing);
  const [low, high] = [-overhang, across.at(-1)! + overhang];
  const rotation = frame.heading(1, 0);
  const spot = (s: number, t: number, z: number): Point3 => [...frame.at(s, t), z];
  const columns = along.flatMap((s) => across.map((t) => ({ at: frame.at(s, t), rotation })));
  const beams =
    high > low ? along.map((s) => ({ from: spot(s, low, beamElevation), to: spot(s, high, beamElevation) })) : [];
  const purlins = purlinPlaces(low, high, shape.purlinSpacing).map((t) => ({
    from: spot(-endOverhang, t, purlinElevation),
    to: spot(bays * spacing + endOverhang, t, purlinElevation),
  }));
  return {
    bays,
    columns,
    beams,
    purlins,
    lines: linesThrough(
      columns.map(({ at }) => at),
      rotation,
    ),
  };
}

function purlinPlaces(low: number, high: number, most: number): number[] {
  if (!(most > 0 && high > low)) return [];
  const gaps = Math.ceil((high - low) / most - 1e-9);
  return Array.from({ length: gaps + 1 }, (_, i) => low + ((high - low) * i) / gaps);
}

function linesThrough(columns: readonly Point2[], rotation: number): CanopyBays['lines'] {
  if (rotation % 90 !== 0) return null;
  const alongX = rotation % 180 === 0;
  const places = (axis: 0 | 1): number[] => [...new Set(columns.map((at) => at[axis]))];
  return alongX
    ? { along: places(0), across: places(1), numbered: 'x' }
    : { along: places(1), across: places(0), numbered: 'y' };
}
