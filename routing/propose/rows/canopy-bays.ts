import type { Point2, Point3 } from '../../site/site.ts';
import { beamBreaks, beamProfile, type CanopySlope, type CanopyWidth, steepness } from './canopy-slope.ts';
import { rowFrame, type Side } from './row-frame.ts';

/** What a canopy's frame is like. Lengths in feet, elevations above grade. */
export interface CanopyShape extends CanopySlope {
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
  /** How far purlins lie over the beams; under 0 between them. */
  readonly purlinsAbove: number;
  /** Most that purlins lie apart, along the slope; 0 draws none. */
  readonly purlinSpacing: number;
  /** On which side of the drawn line the second line of columns stands. */
  readonly side: Side;
}

export interface CanopyBays {
  readonly bays: number;
  /** Each as high as the beam over it. */
  readonly columns: readonly { readonly at: Point2; readonly rotation: number; readonly height: number }[];
  /** Each straight: two to a line of columns where the canopy is bent in the middle. */
  readonly beams: readonly { readonly from: Point3; readonly to: Point3 }[];
  /** Level, each at its own elevation. */
  readonly purlins: readonly { readonly from: Point3; readonly to: Point3 }[];
}

export const MAX_BAYS = 200;

/** Bays on a line of a length: the number of whole spacings that comes nearest to it, at least one. */
export const baysOn = (length: number, spacing: number): number =>
  Math.min(MAX_BAYS, Math.max(1, Math.round(length / spacing)));

/** How far beams go to either side of the drawn line. */
export function canopyWidth({ columnLines, lineGap, overhang, side }: CanopyShape): CanopyWidth {
  const far = overhang + (columnLines === 1 ? 0 : lineGap);
  return side === 'left' ? { right: overhang, left: far } : { right: far, left: overhang };
}

/**
 * A canopy of so many bays along a line: columns, beams over each and sloping as the canopy does, level purlins on the
 * beams. Purlins divide what is straight of the width evenly. RangeError where the line has no length, or a measure that
 * must be over 0 is not.
 */
export function canopyBays(from: Point2, to: Point2, bays: number, shape: CanopyShape): CanopyBays {
  if (!(Number.isInteger(bays) && bays >= 1 && bays <= MAX_BAYS)) throw new RangeError(`no canopy of ${bays} bays`);
  const { spacing, columnLines, lineGap, overhang, endOverhang, columnSize, side } = shape;
  if (!(spacing > 0 && columnSize > 0 && overhang >= 0 && endOverhang >= 0 && (columnLines === 1 || lineGap > 0)))
    throw new RangeError('a canopy needs a spacing and columns of some size');
  const frame = rowFrame(from, to, side);
  // The frame's own side is positive; elevations are told from the left.
  const toLeft = side === 'left' ? 1 : -1;
  const width = canopyWidth(shape);
  const profile = beamProfile(shape, width);
  const height = (t: number): number => profile(t * toLeft);
  const spot = (s: number, t: number, above = 0): Point3 => [...frame.at(s, t), tidy(height(t) + above)];
  const across = columnLines === 1 ? [0] : [0, lineGap];
  const along = Array.from({ length: bays + 1 }, (_, i) => i * spacing);
  const rotation = frame.heading(1, 0);
  const columns = along.flatMap((s) => across.map((t) => ({ at: frame.at(s, t), rotation, height: height(t) })));
  const breaks = beamBreaks(shape.form, width)
    .map((left) => left * toLeft)
    .sort((a, b) => a - b);
  const parts = breaks.slice(1).map((high, i) => [breaks[i]!, high] as const);
  const beams = along.flatMap((s) =>
    parts.filter(([low, high]) => high > low).map(([low, high]) => ({ from: spot(s, low), to: spot(s, high) })),
  );
  const purlins = purlinPlaces(parts, shape).map((t) => ({
    from: spot(-endOverhang, t, shape.purlinsAbove),
    to: spot(bays * spacing + endOverhang, t, shape.purlinsAbove),
  }));
  return { bays, columns, beams, purlins };
}

function purlinPlaces(parts: readonly (readonly [number, number])[], shape: CanopyShape): number[] {
  const { purlinSpacing: most, form, tilt } = shape;
  if (!(most > 0)) return [];
  const slant = Math.hypot(1, steepness(form, tilt));
  const places = parts.flatMap(([low, high]) => {
    if (!(high > low)) return [];
    const gaps = Math.ceil(((high - low) * slant) / most - 1e-9);
    return Array.from({ length: gaps + 1 }, (_, i) => low + ((high - low) * i) / gaps);
  });
  return [...new Set(places)];
}

const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
