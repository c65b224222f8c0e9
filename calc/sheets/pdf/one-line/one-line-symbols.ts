import type { EquipmentKind } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Ink, PENS, WHITE } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering.ts';
import { CAP } from '../kit/letters.ts';
import { shortened } from '../kit/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';

/** What draws a symbol: on a sheet, or on the page. */
export interface SymbolPen extends Pick<Pen, 'line' | 'lines' | 'circle' | 'arc' | 'fill' | 'fillArea' | 'text'> {
  readonly lettering: Pick<Lettering, 'sizes' | 'width'>;
}

/** Height of every symbol of a one-line, points at size 1; its line comes in at the top and goes out at the foot. */
export const SYMBOL_HEIGHT = 48;
/** Half the width of the widest, in the same. */
export const SYMBOL_HALF = 40;
const INK = PENS.heavy;

type Strokes = readonly (readonly Point2[])[];

/** Lays points given about the middle of a symbol at size 1 on the sheet. */
const placing =
  ([x, y]: Point2, k: number) =>
  ([px, py]: Point2): Point2 => [x + k * px, y + k * py];

/** The line through a symbol: from its top to so far over its middle, and from as far under it to its foot. */
const stubs = (half: number): Strokes => [
  [
    [0, SYMBOL_HEIGHT / 2],
    [0, half],
  ],
  [
    [0, -half],
    [0, -SYMBOL_HEIGHT / 2],
  ],
];

/**
 * Draws the symbol of a piece of equipment by the usual signs of one-lines (from memory: ANSI Y32.2, IEC 60617), its upper
 * end at a point, `k` times its size.
 */
export function drawOneLineSymbol(pen: SymbolPen, kind: EquipmentKind, name: string, [x, y]: Point2, k: number): void {
  const middle: Point2 = [x, y - (k * SYMBOL_HEIGHT) / 2];
  const at = placing(middle, k);
  const draw = (strokes: Strokes, ink: Ink): void =>
    pen.lines(
      strokes.map((points) => points.map(at)),
      ink,
    );
  switch (kind) {
    case 'source':
      draw(stubs(15), INK);
      pen.circle(middle, 15 * k, INK);
      draw([wave(0, 0, 9)], PENS.medium);
      return;
    case 'transformer':
      drawTransformer(pen, middle, k, draw);
      return;
    case 'disconnect':
      draw(
        [
          ...stubs(10),
          [
            [0, -10],
            [-10, 9],
          ],
        ],
        INK,
      );
      for (const end of [10, -10]) pen.circle(at([0, end]), 1.8 * k, PENS.plain, WHITE);
      return;
    case 'inverter':
      draw([...stubs(15), square(15, 15)], INK);
      draw(
        [
          [
            [-15, -15],
            [15, 15],
          ],
          [
            [-11, 8],
            [-3, 8],
          ],
          [
            [-11, 5],
            [-3, 5],
          ],
          wave(7, -7, 5),
        ],
        PENS.plain,
      );
      return;
    case 'service': {
      drawService(pen, middle, k, draw);
      const size = pen.lettering.sizes.small * 1.3 * k;
      const words = shortened(name, k * 52, size, pen.lettering, 'bold');
      pen.text(words, [x + 11 * k, middle[1] - (size * CAP) / 2], { size, weight: 'bold', anchor: 'middle' });
      return;
    }
    case 'panelboard':
    case 'switchboard': {
      draw(stubs(15), INK);
      draw([square(SYMBOL_HALF, 15)], kind === 'panelboard' ? INK : PENS.border);
      const size = pen.lettering.sizes.small * 1.3 * k;
      const words = shortened(name, k * (2 * SYMBOL_HALF - 8), size, pen.lettering, 'bold');
      pen.text(words, [x, middle[1] - (size * CAP) / 2], { size, weight: 'bold', anchor: 'middle' });
    }
  }
}

const square = (a: number, b: number): readonly Point2[] => [
  [-a, -b],
  [a, -b],
  [a, b],
  [-a, b],
  [-a, -b],
];

const wave = (x: number, y: number, half: number): readonly Point2[] =>
  Array.from(
    { length: 17 },
    (_, i): Point2 => [x - half + (i * half) / 8, y + (half / 2) * Math.sin((2 * Math.PI * i) / 16)],
  );

/** A board with its meter beside it, and its neutral bonded to ground at its foot. */
function drawService(pen: SymbolPen, middle: Point2, k: number, draw: (strokes: Strokes, ink: Ink) => void): void {
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
function drawTransformer(pen: SymbolPen, middle: Point2, k: number, draw: (strokes: Strokes, ink: Ink) => void): void {
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
