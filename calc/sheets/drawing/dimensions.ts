import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { fromGridline } from '../../../routing/site/place/from-gridlines.ts';
import { offGrid, onGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Gridline, Point2, Site } from '../../../routing/site/site.ts';
import type { DrawnItem, Extent } from './drawing.ts';
import { extentOnGrid } from './extent.ts';

/** Lettering, tick and the distance of a string from what it measures, feet. */
const LETTER = 0.5;
const TICK = 0.4;
const APART = 3;

/**
 * Dimensions as geometry, for a drawing that other programs go on with: gridline to gridline along the edges, and each
 * box and retractor from its nearest gridlines. `around` is what is dimensioned, as far as it reaches on the gridlines.
 */
export function dimensions(site: Site, around: Extent): readonly DrawnItem[] {
  const { x, y } = site.gridlines;
  const at = (u: number, v: number): Point2 => offGrid(site.gridlines, [u, v]);
  return [
    ...between(x).flatMap(([from, to]) =>
      dimension(site, at(from.at, around.maxY + APART), at(to.at, around.maxY + APART)),
    ),
    ...between(y).flatMap(([from, to]) =>
      dimension(site, at(around.minX - APART, from.at), at(around.minX - APART, to.at)),
    ),
    ...site.drops.flatMap(({ box, retractor }) => {
      const apart = retractor && Math.hypot(retractor[0] - box[0], retractor[1] - box[1]) > 0.01;
      return [box, ...(apart ? [retractor] : [])].flatMap((one) => fromNearest(site, [one[0], one[1]]));
    }),
  ];
}

function between(lines: readonly Gridline[]): (readonly [Gridline, Gridline])[] {
  const sorted = [...lines].sort((a, b) => a.at - b.at);
  return sorted.slice(1).map((line, i) => [sorted[i] as Gridline, line]);
}

function fromNearest(site: Site, at: Point2): DrawnItem[] {
  const [u, v] = onGrid(site.gridlines, at);
  const across = fromGridline(site.gridlines.x, u);
  const along = fromGridline(site.gridlines.y, v);
  return [
    ...(across ? dimension(site, offGrid(site.gridlines, [u - across.offset, v]), at) : []),
    ...(along ? dimension(site, offGrid(site.gridlines, [u, v - along.offset]), at) : []),
  ];
}

/** A line with a tick at each end and the length over its middle; nothing where both ends are one point. */
export function dimension(site: Site, from: Point2, to: Point2): DrawnItem[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1e-6) return [];
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  // Read from below or from the right.
  const turn = angle > 90 || angle <= -90 ? angle - Math.sign(angle) * 180 : angle;
  const up = ((turn + 90) * Math.PI) / 180;
  const slant = ((angle + 45) * Math.PI) / 180;
  const tick = ([x, y]: Point2): DrawnItem => ({
    kind: 'line',
    layer: 'dimensions',
    closed: false,
    points: [
      [x - TICK * Math.cos(slant), y - TICK * Math.sin(slant)],
      [x + TICK * Math.cos(slant), y + TICK * Math.sin(slant)],
    ],
  });
  return [
    { kind: 'line', layer: 'dimensions', closed: false, points: [from, to] },
    tick(from),
    tick(to),
    {
      kind: 'text',
      layer: 'dimensions',
      at: [(from[0] + to[0]) / 2 + 0.3 * Math.cos(up), (from[1] + to[1]) / 2 + 0.3 * Math.sin(up)],
      text: printLength(length, site.units),
      height: LETTER,
      turn,
      anchor: 'middle',
    },
  ];
}

/** The drawing with its dimensions on top. */
export function withDimensions<D extends { readonly items: readonly DrawnItem[]; readonly extent: Extent | null }>(
  drawing: D,
  site: Site,
): D {
  if (!drawing.extent) return drawing;
  const around = extentOnGrid(site, drawing.items, drawing.extent);
  return { ...drawing, items: [...drawing.items, ...dimensions(site, around)] };
}
