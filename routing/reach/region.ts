import { hypot2 } from '../plane/hypot.ts';
import type { Point2, Point3, Site } from '../site/site.ts';
import { cordStart, planReach } from './cords/cord-start.ts';
import { growSpider, type Spider } from './cords/spider.ts';
import { fieldOf, obstaclesFor } from './field.ts';
import { seenSector } from './sector.ts';

/** Where a drop's cord hangs from, and how far in plan it goes when it ends at an elevation; null where it cannot. */
/** What a region is worked from. */
type Around = Pick<Site, 'drops' | 'stalls' | 'columns' | 'vehicles' | 'rules'>;

function reachIn(site: Around, dropId: string, inletHeight: number): { from: Point3; radius: number } | null {
  // Looked for, not indexed: while it is dragged, every step has a list of its own.
  const drop = site.drops.find(({ id }) => id === dropId);
  if (!drop) throw new RangeError(`no drop "${dropId}"`);
  const start = cordStart(drop, site.rules);
  const radius = planReach(start, inletHeight);
  return radius === null ? null : { from: start.from, radius };
}

// Each sector looks this far back into what is seen from before its corner, so that no hairline is left between them.
const OVERLAP = 0.02;

/**
 * The region of the plan in which an inlet at an elevation is within reach of a drop's cord, round the vehicle of every
 * stall and every column, as polygons, counter-clockwise. Their union is the region; they overlap a little, so fill them
 * as one path by the non-zero rule. Exact but for the arcs, which are flattened from within, at most `tolerance` feet
 * off. Empty where the cord does not come down to that elevation. An unknown drop is a RangeError.
 *
 * The region is what the retractor sees within the plan reach, and behind each corner on a shortest way what that corner
 * sees within the reach that is left there.
 */
export function reachRegion(site: Around, dropId: string, inletHeight: number, tolerance = 0.02): Point2[][] {
  const reach = reachIn(site, dropId, inletHeight);
  if (!reach || reach.radius <= 0) return [];
  const [x, y] = reach.from;
  const { radius } = reach;
  const near = obstaclesFor(fieldOf(site), [x, y]);
  const obstacles = near({ minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius });
  const spider = growSpider([x, y], obstacles, radius);
  const polygons: Point2[][] = [];
  for (let node = 0; node < spider.count; node++) {
    const left = radius - spider.reach[node]!;
    if (!(left > 0)) continue;
    const [start, end] = node === 0 ? [-Math.PI, Math.PI] : shadow(spider, node);
    if (end - start <= 0) continue;
    const look = { from: [spider.xs[node]!, spider.ys[node]!] as Point2, radius: left, start, end };
    const polygon = seenSector(look, obstacles, tolerance);
    if (polygon.length > 0) polygons.push(polygon);
  }
  return polygons;
}

/** The directions in which a way that comes to a corner can go on, bent round its obstacle. */
function shadow(spider: Spider, node: number): [start: number, end: number] {
  const o = spider.obstacles[spider.owner[node]!]!;
  const i = spider.corner[node]!;
  const next = (i + 1) % o.count;
  const previous = (i + o.count - 1) % o.count;
  const x = spider.xs[node]!;
  const y = spider.ys[node]!;
  const parent = spider.before[node]!;
  const ex = x - spider.xs[parent]!;
  const ey = y - spider.ys[parent]!;
  const side = (j: number): number => {
    const dx = o.xs[j]! - x;
    const dy = o.ys[j]! - y;
    return (ex * dy - ey * dx) / hypot2(dx, dy);
  };
  const onLeft = side(next) + side(previous) > 0;
  const ahead = onLeft ? next : previous;
  const dx = o.xs[ahead]! - x;
  const dy = o.ys[ahead]! - y;
  const straight = Math.atan2(ey, ex);
  const bend = Math.atan2(ex * dy - ey * dx, ex * dx + ey * dy);
  return onLeft ? [straight - OVERLAP, straight + bend] : [straight + bend, straight + OVERLAP];
}
