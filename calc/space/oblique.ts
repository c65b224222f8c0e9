import { type Box, boxOf } from '../../routing/plane/box.ts';
import type { Point2, Point3 } from '../../routing/site/site.ts';
import type { Block } from './block.ts';

/**
 * The military oblique projection: the plan stays as it is, true to scale, and heights are drawn straight up at `times`
 * their length (1, as a drafter draws them). The eye looks down from -y.
 */
export const raisedAt = ([x, y, z]: Point3, times = 1): Point2 => [x, y + times * z];

/** A block as it is seen raised, in the coordinates of the drawing. */
export interface SeenBlock extends Box {
  readonly block: Block;
  /** All that it covers: convex, counter-clockwise. */
  readonly silhouette: readonly Point2[];
  readonly top: readonly Point2[];
  /** Its top and the edges of the sides that are seen. */
  readonly edges: readonly (readonly [Point2, Point2])[];
}

/** What is seen of a block that is raised: its top, and the sides that look towards -y. */
export function seenBlock(block: Block): SeenBlock {
  const { outline, low, high } = block;
  const n = outline.length;
  const foot = outline.map(([x, y]) => raisedAt([x, y, low]));
  const top = outline.map(([x, y]) => raisedAt([x, y, high]));
  // Counter-clockwise, an edge that goes to the right looks towards -y.
  const seen = outline.map((at, i) => outline[(i + 1) % n]![0] - at[0] > 1e-9);
  const silhouette: Point2[] = [];
  const edges: (readonly [Point2, Point2])[] = [];
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n;
    const before = seen[(i + n - 1) % n]!;
    edges.push([top[i]!, top[next]!]);
    if (seen[i]) edges.push([foot[i]!, foot[next]!]);
    if (before || seen[i]) edges.push([foot[i]!, top[i]!]);
    // The foot goes round where a side is seen, the top where none is; where the two meet, both corners.
    if (!before && seen[i]) silhouette.push(top[i]!, foot[i]!);
    else if (before && !seen[i]) silhouette.push(foot[i]!, top[i]!);
    else silhouette.push(seen[i] ? foot[i]! : top[i]!);
  }
  return { block, silhouette, top, edges, ...boxOf(silhouette) };
}
