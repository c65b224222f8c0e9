import { direction } from '../../../routing/plane/direction.ts';
import type { Point2 } from '../../../routing/site/site.ts';

/** Corners of words with so much room round them. */
export function roundWords(
  {
    at: [x, y],
    width,
    height,
    turn,
  }: { readonly at: Point2; readonly width: number; readonly height: number; readonly turn: number },
  room: number,
): readonly Point2[] {
  const [ux, uy] = direction(turn);
  const corner = (along: number, up: number): Point2 => [x + along * ux - up * uy, y + along * uy + up * ux];
  return [
    corner(-room, -room),
    corner(width + room, -room),
    corner(width + room, height + room),
    corner(-room, height + room),
  ];
}
