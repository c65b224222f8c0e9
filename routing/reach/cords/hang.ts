import { hypot2 } from '../../plane/hypot.ts';
import type { Point2 } from '../../site/site.ts';
import type { Hang } from '../reach-result.ts';
import { catenary, riseAt } from './catenary.ts';
import { lengthAlong, partAlong, pointAlong } from './plan-path.ts';

/**
 * How a cord hangs when `length` feet of it are out between a retractor at elevation `from` and an inlet at elevation
 * `to`: a catenary over the plan path of the taut cord, unrolled where that bends round a vehicle. Gives its lowest
 * point, and the part of the path over which it is lower than `headroom`. Where the curve would go below grade the cord
 * lies on the ground and `low` is 0. Null where the cord is too short to arrive.
 */
export function hang(path: readonly Point2[], from: number, to: number, length: number, headroom: number): Hang | null {
  const span = lengthAlong(path);
  const drop = from - to;
  if (path.length === 0 || length < hypot2(span, drop) - 1e-9) return null;
  const shape = profile(span, from, to, length, headroom);
  const [start, end] = shape.under ?? [0, 0];
  return {
    low: Math.max(0, shape.low),
    lowAt: pointAlong(path, shape.lowAt),
    strip: shape.under && stripAlong(path, start, end),
  };
}

/** How a cord lies that goes along the ground: `low` is 0 at its foot, and all of its way is under any headroom. */
export function lying(path: readonly Point2[], reaches: boolean): Hang | null {
  const foot = path[0];
  if (foot === undefined || !reaches) return null;
  const span = lengthAlong(path);
  return { low: 0, lowAt: foot, strip: span > 0 ? stripAlong(path, 0, span) : null };
}

function stripAlong(path: readonly Point2[], start: number, end: number): NonNullable<Hang['strip']> {
  const strip = partAlong(path, start, end);
  return { from: strip[0]!, to: strip.at(-1)!, length: end - start, path: strip };
}

interface Profile {
  readonly low: number;
  /** Plan distance of the lowest point from the retractor. */
  readonly lowAt: number;
  /** Between which plan distances the cord is under the headroom; null where nowhere. */
  readonly under: readonly [number, number] | null;
}

function profile(span: number, from: number, to: number, length: number, headroom: number): Profile {
  const curve = catenary(length, span, from - to);
  if (!curve) return span > 1e-9 ? straight(span, from, to, headroom) : loop(from, to, length, headroom);
  const bottom = from - riseAt(curve, 0);
  const lowAt = Math.min(span, Math.max(0, curve.bottom));
  const low = lowAt === 0 ? from : lowAt === span ? to : bottom;
  const reach = headroom > bottom ? 2 * curve.a * Math.asinh(Math.sqrt((headroom - bottom) / (2 * curve.a))) : 0;
  const start = Math.max(0, curve.bottom - reach);
  const end = Math.min(span, curve.bottom + reach);
  return { low, lowAt, under: end > start ? [start, end] : null };
}

// A taut cord.
function straight(span: number, from: number, to: number, headroom: number): Profile {
  const low = Math.min(from, to);
  const at = from === to ? 0 : Math.min(1, Math.max(0, (from - headroom) / (from - to))) * span;
  const under: readonly [number, number] =
    low >= headroom ? [0, 0] : from >= headroom ? [at, span] : [0, to >= headroom ? at : span];
  return { low, lowAt: from <= to ? 0 : span, under: under[1] > under[0] ? under : null };
}

// The inlet straight under the retractor: the cord goes down and comes up again.
function loop(from: number, to: number, length: number, headroom: number): Profile {
  const low = (from + to - length) / 2;
  return { low, lowAt: 0, under: low < headroom ? [0, 0] : null };
}
