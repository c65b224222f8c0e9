import { clippedLine } from '../../../../routing/plane/clip-line.ts';
import { offGrid, onGrid } from '../../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import type { Frame } from '../frame.ts';

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
    const seen = clippedLine(far, named, { minX: inset, minY: inset, maxX: width - inset, maxY: height - inset });
    if (!seen) return [];
    const at = (share: number): Point2 => [far[0] + share * (named[0] - far[0]), far[1] + share * (named[1] - far[1])];
    return [{ label, far: at(seen.begins), named: at(seen.ends) }];
  });
}
