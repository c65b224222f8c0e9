import type { Side } from './row-frame.ts';

/** How a canopy lies across its width: level, rising to one side, low in the middle, or high in the middle. */
export const CANOPY_FORMS = ['flat', 'one slope', 'valley', 'ridge'] as const;
export type RoofForm = (typeof CANOPY_FORMS)[number];

/** Where the elevation of beams is given: at their lowest edge, or over the drawn line of columns. */
export const LEVELS_AT = ['columns', 'low edge'] as const;
export type LevelAt = (typeof LEVELS_AT)[number];

export interface CanopySlope {
  readonly form: RoofForm;
  /** Degrees from level; without meaning on a flat canopy. 2 to 7 is common practice, no source. */
  readonly tilt: number;
  /** To which side of the drawn line a canopy of one slope rises. */
  readonly rises: Side;
  readonly levelAt: LevelAt;
  /** Of the beams there, feet above grade. */
  readonly beamElevation: number;
}

/** The plan width of a canopy: how far beams go from the drawn line to the right and to the left of it. */
export interface CanopyWidth {
  readonly right: number;
  readonly left: number;
}

/** Steeper is a roof, not a canopy. */
export const MAX_TILT = 45;

/** How far in plan the beams rise in one go: over the width, or over half of it where it is low or high in the middle. */
export const risingRun = (form: RoofForm, { right, left }: CanopyWidth): number =>
  form === 'flat' ? 0 : form === 'one slope' ? right + left : (right + left) / 2;

/** From the lowest to the highest of the beams, feet. */
export const riseOf = ({ form, tilt }: CanopySlope, width: CanopyWidth): number =>
  risingRun(form, width) * steepness(form, tilt);

/** The tilt in degrees at which a canopy rises so much from its lowest edge; null where it would be no canopy. */
export function tiltOf(rise: number, form: RoofForm, width: CanopyWidth): number | null {
  const run = risingRun(form, width);
  if (!(run > 0 && rise >= 0)) return null;
  const tilt = (Math.atan(rise / run) * 180) / Math.PI;
  return tilt <= MAX_TILT ? tilt : null;
}

/**
 * The elevation of the beams at a distance to the left of the drawn line (to the right, negative). Feet. RangeError
 * where the tilt is not from 0 to 45 degrees.
 */
export function beamProfile(slope: CanopySlope, width: CanopyWidth): (left: number) => number {
  const { form, tilt, rises, levelAt, beamElevation } = slope;
  if (!(tilt >= 0 && tilt <= MAX_TILT)) throw new RangeError(`no canopy is tilted by ${tilt} degrees`);
  const steep = steepness(form, tilt);
  const middle = (width.left - width.right) / 2;
  const raw = (left: number): number => {
    if (form === 'flat') return 0;
    if (form === 'one slope') return rises === 'left' ? left * steep : -left * steep;
    return form === 'valley' ? Math.abs(left - middle) * steep : -Math.abs(left - middle) * steep;
  };
  const base = levelAt === 'columns' ? raw(0) : Math.min(raw(-width.right), raw(middle), raw(width.left));
  return (left) => tidy(beamElevation + raw(left) - base);
}

/** Plan places, to the left of the drawn line, between which beams are straight: the edges, and the middle of a bent one. */
export const beamBreaks = (form: RoofForm, { right, left }: CanopyWidth): readonly number[] =>
  form === 'valley' || form === 'ridge' ? [-right, (left - right) / 2, left] : [-right, left];

/** Feet up for a foot across. */
export const steepness = (form: RoofForm, tilt: number): number =>
  form === 'flat' ? 0 : Math.tan((tilt * Math.PI) / 180);

/** A billionth of a foot is rounding. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
