import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { DrawnItem } from './drawing.ts';

/** Lettering and tick, feet. */
const LETTER = 0.5;
const TICK = 0.4;

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
