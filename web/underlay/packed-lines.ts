import type { DrawnLine, LineLook } from '../../routing/site/import/imported.ts';
import type { Point2 } from '../../routing/site/site.ts';

/** Lines in few large arrays, which pass from a worker at no cost and draw without a walk over objects. */
export interface PackedLines {
  readonly layers: readonly string[];
  readonly looks: readonly LineLook[];
  /** Of each line: its layer, its look, where its points start (one more at the end), and whether it is closed. */
  readonly layerOf: Uint32Array;
  readonly lookOf: Uint32Array;
  readonly starts: Uint32Array;
  readonly closed: Uint8Array;
  /** Coordinates one after the other, x and y. */
  readonly xy: Float64Array;
  /** Least x and y and largest x and y of each line. */
  readonly boxes: Float64Array;
}

const PLAIN: LineLook = { color: null, weight: 0, width: 0, dash: [], filled: false };

export function packedLines(lines: readonly DrawnLine[]): PackedLines {
  const layers = new Map<string, number>();
  const looks = new Map<LineLook, number>();
  const layerOf = new Uint32Array(lines.length);
  const lookOf = new Uint32Array(lines.length);
  const starts = new Uint32Array(lines.length + 1);
  const closed = new Uint8Array(lines.length);
  const boxes = new Float64Array(4 * lines.length);
  const xy = new Float64Array(2 * lines.reduce((sum, { points }) => sum + points.length, 0));
  let at = 0;
  for (const [i, line] of lines.entries()) {
    layerOf[i] = numbered(layers, line.layer);
    lookOf[i] = numbered(looks, line.look ?? PLAIN);
    closed[i] = line.closed ? 1 : 0;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const [x, y] of line.points) {
      xy[2 * at] = x;
      xy[2 * at + 1] = y;
      at += 1;
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
    starts[i + 1] = at;
    boxes[4 * i] = minX;
    boxes[4 * i + 1] = minY;
    boxes[4 * i + 2] = maxX;
    boxes[4 * i + 3] = maxY;
  }
  return { layers: [...layers.keys()], looks: [...looks.keys()], layerOf, lookOf, starts, closed, xy, boxes };
}

/** The number of a thing among those that were met before. */
function numbered<T>(numbers: Map<T, number>, thing: T): number {
  const known = numbers.get(thing);
  if (known !== undefined) return known;
  numbers.set(thing, numbers.size);
  return numbers.size - 1;
}

/** What of packed lines passes from a worker without being copied. */
export const buffersOf = ({ layerOf, lookOf, starts, closed, xy, boxes }: PackedLines): ArrayBufferLike[] =>
  [layerOf, lookOf, starts, closed, xy, boxes].map(({ buffer }) => buffer);

/** The lines of some layers as they were packed. */
export function unpackedLines(
  { layers, layerOf, starts, closed, xy }: PackedLines,
  wanted: ReadonlySet<string>,
): readonly DrawnLine[] {
  const lines: DrawnLine[] = [];
  for (let i = 0; i < layerOf.length; i++) {
    const layer = layers[layerOf[i]!]!;
    if (!wanted.has(layer)) continue;
    const points: Point2[] = [];
    for (let at = starts[i]!; at < starts[i + 1]!; at++) points.push([xy[2 * at]!, xy[2 * at + 1]!]);
    lines.push({ layer, points, closed: closed[i] === 1 });
  }
  return lines;
}

/** How many lines each layer holds, in the order of the file. */
export function linesPerLayer({ layers, layerOf }: PackedLines): readonly (readonly [layer: string, count: number])[] {
  const counts = new Array<number>(layers.length).fill(0);
  for (const layer of layerOf) counts[layer]! += 1;
  return layers.map((layer, i) => [layer, counts[i]!]);
}
