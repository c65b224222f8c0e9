import type { Point2 } from '../../../../routing/site/site.ts';
import type { DrawnSheet, DrawnText, Stroke } from './drawn-sheets.ts';

/** Letters may come this close without being over one another, points. */
const TOUCH = 0.4;

interface Boxed {
  readonly text: DrawnText;
  readonly corners: readonly Point2[];
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

/** The box of a text, a little inside of it. */
function boxed(text: DrawnText): Boxed {
  const [a, b, , d] = text.corners as readonly [Point2, Point2, Point2, Point2];
  const unit = (to: Point2): Point2 => {
    const length = Math.hypot(to[0] - a[0], to[1] - a[1]) || 1;
    return [(TOUCH * (to[0] - a[0])) / length, (TOUCH * (to[1] - a[1])) / length];
  };
  const [u, v] = [unit(b), unit(d)];
  const signs = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const;
  const corners = text.corners.map(
    ([x, y], i): Point2 => [
      x + signs[i]![0] * u[0] + signs[i]![1] * v[0],
      y + signs[i]![0] * u[1] + signs[i]![1] * v[1],
    ],
  );
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return {
    text,
    corners,
    minX: Math.min(...xs),
    maxX: Math.max(...xs),
    minY: Math.min(...ys),
    maxY: Math.max(...ys),
  };
}

/** Two convex shapes share a point: no line along a side of either parts them. */
function meet(a: readonly Point2[], b: readonly Point2[]): boolean {
  for (const shape of [a, b])
    for (let i = 0; i < shape.length; i++) {
      const [[x1, y1], [x2, y2]] = [shape[i]!, shape[(i + 1) % shape.length]!];
      const along = ([x, y]: Point2): number => x * (y2 - y1) - y * (x2 - x1);
      const [pa, pb] = [a.map(along), b.map(along)];
      if (Math.max(...pa) <= Math.min(...pb) || Math.max(...pb) <= Math.min(...pa)) return false;
    }
  return true;
}

const boxesOf = ({ texts }: DrawnSheet): readonly Boxed[] =>
  texts
    .filter(({ corners: [a, b] }) => Math.hypot(b![0] - a![0], b![1] - a![1]) > 2 * TOUCH)
    .map(boxed)
    .sort((a, b) => a.minX - b.minX);

/** Pairs of texts of a sheet that lie over one another. */
export function textsOverTexts(sheet: DrawnSheet): readonly string[] {
  const boxes = boxesOf(sheet);
  const pairs: string[] = [];
  boxes.forEach((box, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k]!.minX < box.maxX; k++)
      if (meet(box.corners, boxes[k]!.corners))
        pairs.push(`${sheet.number}: "${box.text.text}" over "${boxes[k]!.text.text}"`);
  });
  return pairs;
}

/**
 * Texts that a stroke goes through, of those strokes that matter; where `unlessParted`, of texts that nothing white lies
 * under alone.
 */
export function textsOverLines(
  sheet: DrawnSheet,
  matters: (stroke: Stroke) => boolean,
  unlessParted = false,
): readonly string[] {
  const fills = unlessParted ? sheet.fills.map(bounded) : [];
  const boxes = boxesOf(sheet).filter((box) => !(unlessParted && isParted(fills, box)));
  const widest = boxes.reduce((most, { minX, maxX }) => Math.max(most, maxX - minX), 0);
  const firstFrom = (x: number): number => {
    let [low, high] = [0, boxes.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (boxes[middle]!.minX < x) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const over: string[] = [];
  for (const stroke of sheet.strokes.filter(matters)) {
    const { clip, points } = stroke;
    for (let i = 1; i < points.length; i++) {
      const leg = clip === null ? ([points[i - 1]!, points[i]!] as const) : clipped(points[i - 1]!, points[i]!, clip);
      if (leg === null) continue;
      const [a, b] = leg;
      const [minX, maxX] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
      const [minY, maxY] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
      for (let k = firstFrom(minX - widest); k < boxes.length && boxes[k]!.minX <= maxX; k++) {
        const box = boxes[k]!;
        if (box.maxX < minX || box.minY > maxY || box.maxY < minY) continue;
        if (!meet(box.corners, [a, b])) continue;
        const says = `${sheet.number}: "${box.text.text}" (${box.text.layer}) over ${stroke.layer ?? `a line of ${stroke.ink.weight} mm`}`;
        if (!over.includes(says)) over.push(says);
      }
    }
  }
  return over;
}

/** The part of a straight that lies in an area; null where none does. */
function clipped(
  a: Point2,
  b: Point2,
  { x, y, width, height }: NonNullable<Stroke['clip']>,
): readonly [Point2, Point2] | null {
  let [from, to] = [0, 1];
  const low = [x, y];
  const high = [x + width, y + height];
  for (const axis of [0, 1] as const) {
    const step = b[axis] - a[axis];
    if (Math.abs(step) < 1e-9) {
      if (a[axis] < low[axis]! || a[axis] > high[axis]!) return null;
      continue;
    }
    const [t1, t2] = [(low[axis]! - a[axis]) / step, (high[axis]! - a[axis]) / step];
    from = Math.max(from, Math.min(t1, t2));
    to = Math.min(to, Math.max(t1, t2));
  }
  if (from > to) return null;
  const at = (t: number): Point2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  return [at(from), at(to)];
}

interface Bounded {
  readonly fill: DrawnSheet['fills'][number];
  readonly box: Pick<Boxed, 'minX' | 'maxX' | 'minY' | 'maxY'>;
}

function bounded(fill: DrawnSheet['fills'][number]): Bounded {
  const xs = fill.points.map(([x]) => x);
  const ys = fill.points.map(([, y]) => y);
  return { fill, box: { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) } };
}

/** Something was filled under a text before it was written. */
const isParted = (fills: readonly Bounded[], { text: { order, corners }, ...own }: Boxed): boolean =>
  fills.some(
    ({ fill, box }) =>
      fill.order < order &&
      fill.points.length > 2 &&
      box.minX < own.maxX + TOUCH &&
      box.maxX > own.minX - TOUCH &&
      box.minY < own.maxY + TOUCH &&
      box.maxY > own.minY - TOUCH &&
      meet(fill.points, corners),
  );
