import { offGrid, onGrid } from '../../../routing/site/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Frame } from './frame.ts';

/** A gridline as it lies on the screen, pixels, from its far end to the end at which its name stands. */
export interface ScreenLine {
  readonly label: string;
  readonly far: Point2;
  readonly named: Point2;
}

/**
 * Gridlines that are turned or have an origin of their own, on the screen: as far as the drawing reaches along them and
 * `clear` pixels more, their names within `inset` pixels of the view's edge. Those out of view are left out.
 */
export function turnedGridlines(
  { scale, left, top, width, height }: Frame,
  gridlines: Site['gridlines'],
  extent: Frame['box'],
  clear: number,
  inset: number,
): ScreenLine[] {
  const corners: Point2[] = [
    [extent.minX, extent.minY],
    [extent.maxX, extent.minY],
    [extent.maxX, extent.maxY],
    [extent.minX, extent.maxY],
  ];
  const reached = corners.map((corner) => onGrid(gridlines, corner));
  const [us, vs] = [reached.map(([u]) => u), reached.map(([, v]) => v)];
  const more = clear / scale;
  const [minU, maxU] = [Math.min(...us) - more / 2, Math.max(...us) + more];
  const [minV, maxV] = [Math.min(...vs) - more / 2, Math.max(...vs) + more];
  const onScreen = (u: number, v: number): Point2 => {
    const [x, y] = offGrid(gridlines, [u, v]);
    return [left + x * scale, top - y * scale];
  };
  const lines = [
    ...gridlines.x.map(({ label, at }) => ({ label, far: onScreen(at, minV), named: onScreen(at, maxV) })),
    ...gridlines.y.map(({ label, at }) => ({ label, far: onScreen(minU, at), named: onScreen(maxU, at) })),
  ];
  return lines.flatMap(({ label, far, named }) => {
    const seen = clipped(far, named, inset, width - inset, height - inset);
    return seen ? [{ label, far: seen[0], named: seen[1] }] : [];
  });
}

/** The part of a line that lies within a frame from `low` to `right` and `bottom`; null where none does. */
function clipped(
  from: Point2,
  to: Point2,
  low: number,
  right: number,
  bottom: number,
): readonly [from: Point2, to: Point2] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [start, end] = [0, 1];
  for (const [step, room] of [
    [-dx, from[0] - low],
    [dx, right - from[0]],
    [-dy, from[1] - low],
    [dy, bottom - from[1]],
  ] as const) {
    if (step === 0) {
      if (room < 0) return null;
    } else if (step < 0) start = Math.max(start, room / step);
    else end = Math.min(end, room / step);
  }
  if (start > end) return null;
  const at = (t: number): Point2 => [from[0] + t * dx, from[1] + t * dy];
  return [at(start), at(end)];
}
