import type { Area } from '../../../../../calc/sheets/pdf/kit/area.ts';

/** Two areas share more than an edge. */
export const overlap = (a: Area, b: Area): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Small boxes along a line, each of at most six points, so far to either side of it. */
export function alongLine(points: readonly (readonly [number, number])[], off: number): readonly Area[] {
  return points.slice(1).flatMap(([bx, by], i) => {
    const [ax, ay] = points[i]!;
    const count = ax === bx || ay === by ? 1 : Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 6));
    return Array.from({ length: count }, (_, k): Area => {
      const xs = [k, k + 1].map((n) => ax + ((bx - ax) * n) / count);
      const ys = [k, k + 1].map((n) => ay + ((by - ay) * n) / count);
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      return { x: x - off, y: y - off, width: Math.max(...xs) - x + 2 * off, height: Math.max(...ys) - y + 2 * off };
    });
  });
}
