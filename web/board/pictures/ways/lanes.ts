import type { Point3 } from '../../../../routing/site/site.ts';
import type { BoardPen, Frame } from '../frame.ts';

/** Past this many times the offset a mitre is cut short, as a draughtsman would. */
const MITRE_LIMIT = 2.5;

/**
 * Adds to the pen's path the line that keeps `offset` pixels to the right of a run's plan path, with mitred corners.
 * Legs that stand upright have no length in plan and are passed over.
 */
export function traceBeside(pen: BoardPen, { scale, left, top }: Frame, path: readonly Point3[], offset: number): void {
  let lastX = 0;
  let lastY = 0;
  let dirX = 0;
  let dirY = 0;
  let legs = 0;
  for (let i = 0; i < path.length; i++) {
    const x = left + path[i]![0] * scale;
    const y = top - path[i]![1] * scale;
    if (i > 0) {
      const dx = x - lastX;
      const dy = y - lastY;
      const length = Math.hypot(dx, dy);
      if (length < 1e-6) continue;
      const ux = dx / length;
      const uy = dy / length;
      if (legs === 0) pen.moveTo(lastX - uy * offset, lastY + ux * offset);
      else joint(pen, lastX, lastY, dirX, dirY, ux, uy, offset);
      dirX = ux;
      dirY = uy;
      legs++;
    }
    lastX = x;
    lastY = y;
  }
  if (legs > 0) pen.lineTo(lastX - dirY * offset, lastY + dirX * offset);
}

function joint(
  pen: BoardPen,
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  offset: number,
): void {
  const mitred = mitre(x, y, ax, ay, bx, by, offset);
  if (mitred) {
    pen.lineTo(mitred[0], mitred[1]);
    return;
  }
  pen.lineTo(x - ay * offset, y + ax * offset);
  pen.lineTo(x - by * offset, y + bx * offset);
}

/**
 * The corner, pixels, of a line that keeps `offset` to the right of two legs that meet at a point, going a and then b;
 * null where they double back so sharply that a corner would be a spike.
 */
function mitre(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  offset: number,
): readonly [number, number] | null {
  const nx = -ay - by;
  const ny = ax + bx;
  const size = Math.hypot(nx, ny);
  // Half the sum of two unit normals is as long as the cosine of half the bend.
  const reach = 2 / size;
  if (size <= 1e-6 || reach > MITRE_LIMIT) return null;
  return [x + (nx / size) * offset * reach, y + (ny / size) * offset * reach];
}

type Way = readonly [number, number];

/** Adds one straight lane beside a leg to the pen's path, its ends cut to meet what comes before and after. Pixels. */
export function traceLane(
  pen: BoardPen,
  x: number,
  y: number,
  way: Way,
  length: number,
  offset: number,
  before: Way | null,
  after: Way | null,
): void {
  const [ux, uy] = way;
  const endX = x + ux * length;
  const endY = y + uy * length;
  const start = before && mitre(x, y, before[0], before[1], ux, uy, offset);
  const end = after && mitre(endX, endY, ux, uy, after[0], after[1], offset);
  pen.moveTo(start?.[0] ?? x - uy * offset, start?.[1] ?? y + ux * offset);
  pen.lineTo(end?.[0] ?? endX - uy * offset, end?.[1] ?? endY + ux * offset);
}
