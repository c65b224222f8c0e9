import { twiceAreaOf } from '../../../routing/plane/area.ts';
import type { Box } from '../../../routing/plane/box.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { DrawnItem } from './drawing.ts';

/** Length of one scallop, feet. */
const SCALLOP = 2;
const STEPS = 6;
/** Of one side; a longer one has larger ones. */
const MOST_SCALLOPS = 400;

/** A cloud along an outline with a delta that carries its mark, none where the mark is empty. */
export function cloudItems(outline: readonly Point2[], mark: string): DrawnItem[] {
  const corner = deltaCorner(outline);
  const [x, y] = [corner[0] + 1.2, corner[1] + 0.6];
  const cloud: DrawnItem = { kind: 'line', layer: 'revisions', points: scalloped(outline, SCALLOP), closed: true };
  if (mark === '') return [cloud];
  return [
    cloud,
    {
      kind: 'line',
      layer: 'revisions',
      points: [
        [x - 0.9, y - 0.5],
        [x + 0.9, y - 0.5],
        [x, y + 1.1],
      ],
      closed: true,
    },
    { kind: 'text', layer: 'revisions', at: [x, y - 0.3], text: mark, height: 0.6, turn: 0, anchor: 'middle' },
  ];
}

/** The corner of a cloud at which its delta stands: the one that lies farthest up and to the right. */
export const deltaCorner = (outline: readonly Point2[]): Point2 =>
  outline.reduce((best, at) => (at[0] + at[1] > best[0] + best[1] ? at : best));

/** The outline of a cloud round an area, in half circles about `scallop` wide that bulge outward. */
export const cloudOutline = (area: Box, scallop: number): readonly Point2[] => scalloped(cornersOf(area), scallop);

const cornersOf = ({ minX, minY, maxX, maxY }: Box): readonly Point2[] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

/** An outline, either way round, in half circles about `scallop` wide that bulge outward. */
export function scalloped(outline: readonly Point2[], scallop: number): readonly Point2[] {
  const corners = twiceAreaOf(outline) < 0 ? outline.toReversed() : outline;
  return corners.flatMap((from, i) => scallopsOf(from, corners[(i + 1) % corners.length] as Point2, scallop));
}

/** Half circles bulging to the right of the way from one corner to the next, which is outward when it runs left round. */
function scallopsOf(from: Point2, to: Point2, scallop: number): Point2[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [];
  const count = Math.min(MOST_SCALLOPS, Math.max(1, Math.round(length / scallop)));
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const radius = length / count / 2;
  return Array.from({ length: count }, (_, k) => k).flatMap((k) =>
    Array.from({ length: STEPS }, (_, step): Point2 => {
      const angle = Math.PI * (1 - step / STEPS);
      const along = (2 * k + 1) * radius + radius * Math.cos(angle);
      const out = radius * Math.sin(angle);
      return [from[0] + along * ux + out * uy, from[1] + along * uy - out * ux];
    }),
  );
}
