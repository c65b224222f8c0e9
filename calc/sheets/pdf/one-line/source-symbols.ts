import type { Point2 } from '../../../../routing/site/site.ts';
import { type Ink, PENS } from '../kit/ink.ts';
import { INK, placing, type Strokes, SYMBOL_HALF, type SymbolPen, stubs } from './symbol-pen.ts';

/** A board with its meter beside it, and its neutral bonded to ground at its foot. */
export function drawService(
  pen: SymbolPen,
  middle: Point2,
  k: number,
  draw: (strokes: Strokes, ink: Ink) => void,
): void {
  const at = placing(middle, k);
  const [left, right, half] = [-18, SYMBOL_HALF, 15];
  draw(stubs(half), INK);
  draw(
    [
      [
        [left, -half],
        [right, -half],
        [right, half],
        [left, half],
        [left, -half],
      ],
    ],
    PENS.border,
  );
  pen.circle(at([-31, 0]), 8 * k, INK);
  draw(
    [
      [
        [-23, 0],
        [left, 0],
      ],
      [
        [-34, -4],
        [-34, 4],
        [-31, -1],
        [-28, 4],
        [-28, -4],
      ],
    ],
    PENS.plain,
  );
  draw(groundAt(30, -half), PENS.plain);
}

/** From a point down to three bars that grow shorter. */
const groundAt = (x: number, y: number): Strokes => [
  [
    [x, y],
    [x, y - 5],
  ],
  ...[5, 3.2, 1.4].map((half, i): readonly Point2[] => [
    [x - half, y - 5 - 2 * i],
    [x + half, y - 5 - 2 * i],
  ]),
];

/** Two rows of half turns, delta above and grounded wye below, as the plan takes every transformer to be wound. */
export function drawTransformer(
  pen: SymbolPen,
  middle: Point2,
  k: number,
  draw: (strokes: Strokes, ink: Ink) => void,
): void {
  const at = placing(middle, k);
  draw(stubs(9), INK);
  for (const i of [-2, -1, 0, 1]) {
    const x = 7 * i + 3.5;
    pen.arc(at([x, 9]), 3.5 * k, 180, 360, INK);
    pen.arc(at([x, -9]), 3.5 * k, 0, 180, INK);
  }
  draw(
    [
      [
        [-14, 1],
        [14, 1],
      ],
      [
        [-14, -1],
        [14, -1],
      ],
    ],
    PENS.thin,
  );
  const delta: Strokes = [
    [
      [-30, 9],
      [-20, 9],
      [-25, 18],
      [-30, 9],
    ],
  ];
  const wye: Strokes = [
    [
      [-25, -15],
      [-30, -10],
    ],
    [
      [-25, -15],
      [-20, -10],
    ],
    [
      [-25, -15],
      [-25, -21],
    ],
  ];
  // From the star point to three bars that grow shorter.
  const ground: Strokes = [
    [
      [-25, -15],
      [-38, -15],
      [-38, -21],
    ],
    ...[5, 3.2, 1.4].map((half, i): readonly Point2[] => [
      [-38 - half, -21 - 2 * i],
      [-38 + half, -21 - 2 * i],
    ]),
  ];
  draw([...delta, ...wye, ...ground], PENS.plain);
}
