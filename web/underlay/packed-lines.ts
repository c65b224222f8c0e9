import type { DrawnLine } from '../../routing/site/import/imported.ts';
import type { Point2 } from '../../routing/site/site.ts';

/** Lines in few large arrays, which pass from a worker at no cost and draw without a walk over objects. */
export interface PackedLines {
  readonly layers: readonly string[];
  /** Of each line: its layer, where its points start (one more at the end), and whether it is closed. */
  readonly layerOf: Uint32Array;
  readonly starts: Uint32Array;
  readonly closed: Uint8Array;
  /** Coordinates one after the other, x and y. */
  readonly xy: Float64Array;
}

export function packedLines(lines: readonly DrawnLine[]): PackedLines {
  const layers = new Map<string, number>();
  const layerOf = new Uint32Array(lines.length);
  const starts = new Uint32Array(lines.length + 1);
  const closed = new Uint8Array(lines.length);
  const xy = new Float64Array(2 * lines.reduce((sum, { points }) => sum + points.length, 0));
  let at = 0;
  lines.forEach((line, i) => {
    if (!layers.has(line.layer)) layers.set(line.layer, layers.size);
    layerOf[i] = layers.get(line.layer)!;
    closed[i] = line.closed ? 1 : 0;
    for (const [x, y] of line.points) {
      xy[2 * at] = x;
      xy[2 * at + 1] = y;
      at += 1;
    }
    starts[i + 1] = at;
  });
  return { layers: [...layers.keys()], layerOf, starts, closed, xy };
}

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
