import type { ImportedLine, LineLook } from '../../../routing/site/import/imported.ts';
import type { Point2 } from '../../../routing/site/site.ts';

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

export function packedLines(lines: readonly ImportedLine[]): PackedLines {
  const packer = linePacker();
  for (const line of lines) packer.put(line);
  return packer.packed();
}

/** Packs lines as they come. */
export function linePacker(): { readonly put: (line: ImportedLine) => void; readonly packed: () => PackedLines } {
  const layers = new Map<string, number>();
  const looks = new Map<LineLook, number>();
  let layerOf = new Uint32Array(1024);
  let lookOf = new Uint32Array(1024);
  let starts = new Uint32Array(1025);
  let closed = new Uint8Array(1024);
  let boxes = new Float64Array(4 * 1024);
  let xy = new Float64Array(8 * 1024);
  let [count, at] = [0, 0];
  const put = (line: ImportedLine): void => {
    if (count === closed.length) {
      layerOf = grown(layerOf, new Uint32Array(2 * count));
      lookOf = grown(lookOf, new Uint32Array(2 * count));
      starts = grown(starts, new Uint32Array(2 * count + 1));
      closed = grown(closed, new Uint8Array(2 * count));
      boxes = grown(boxes, new Float64Array(8 * count));
    }
    const length = 2 * (at + line.points.length);
    if (length > xy.length) xy = grown(xy, new Float64Array(Math.max(length, 2 * xy.length)));
    layerOf[count] = numbered(layers, line.layer);
    lookOf[count] = numbered(looks, line.look ?? PLAIN);
    closed[count] = line.closed ? 1 : 0;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const point of line.points) {
      const [x, y] = [point[0], point[1]];
      xy[2 * at] = x;
      xy[2 * at + 1] = y;
      at += 1;
      if (x < minX) minX = x;
      if (y < minY) minY = y;
      if (x > maxX) maxX = x;
      if (y > maxY) maxY = y;
    }
    boxes[4 * count] = minX;
    boxes[4 * count + 1] = minY;
    boxes[4 * count + 2] = maxX;
    boxes[4 * count + 3] = maxY;
    count += 1;
    starts[count] = at;
  };
  const packed = (): PackedLines => ({
    layers: [...layers.keys()],
    looks: [...looks.keys()],
    layerOf: layerOf.slice(0, count),
    lookOf: lookOf.slice(0, count),
    starts: starts.slice(0, count + 1),
    closed: closed.slice(0, count),
    xy: xy.slice(0, 2 * at),
    boxes: boxes.slice(0, 4 * count),
  });
  return { put, packed };
}

function grown<T extends Uint8Array | Uint32Array | Float64Array>(before: T, after: T): T {
  after.set(before);
  return after;
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
): readonly ImportedLine[] {
  const lines: ImportedLine[] = [];
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
