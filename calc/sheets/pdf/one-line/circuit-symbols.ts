import type { Point2 } from '../../../../routing/site/site.ts';
import { PENS, WHITE } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';
import type { SymbolPen } from './symbol-pen.ts';

/** A breaker on a line: a gap between two contacts with an arc over it; the line's own colour. */
export function drawBreaker(pen: SymbolPen, [x, y]: Point2, colour: string, k: number): void {
  const ink = { weight: 0.35, colour };
  pen.fillArea({ x: x - 1.5, y: y - 7 * k, width: 3, height: 14 * k }, WHITE);
  pen.arc([x - 4 * k, y], 8.1 * k, -60, 60, ink);
  for (const end of [7, -7]) pen.circle([x, y + end * k], 1.6 * k, ink, WHITE);
}

/** Branches going off: a line with an arrow head, its upper end at a point. */
export function drawBranches(pen: SymbolPen, [x, y]: Point2, length: number): void {
  pen.line(
    [
      [x, y],
      [x, y - length],
    ],
    PENS.medium,
  );
  pen.fill(
    [
      [x, y - length - 6],
      [x - 3, y - length],
      [x + 3, y - length],
    ],
    PENS.medium.colour,
  );
}

/** A conductor to ground out of the side of a symbol: out, down, and three bars that grow shorter. */
export function drawGround(pen: Pen, [x, y]: Point2, k: number): void {
  const [out, down] = [x - 8 * k, y - 12 * k];
  pen.lines(
    [
      [
        [x, y],
        [out, y],
        [out, down],
      ],
      ...[5, 3.2, 1.4].map((half, i): readonly Point2[] => [
        [out - half * k, down - 2 * i * k],
        [out + half * k, down - 2 * i * k],
      ]),
    ],
    PENS.plain,
  );
}
