import type { EquipmentKind } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Ink, PENS, WHITE } from '../kit/ink.ts';
import { CAP } from '../kit/lettering/letters.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import { drawService, drawTransformer } from './source-symbols.ts';
import { INK, placing, type Strokes, SYMBOL_HALF, SYMBOL_HEIGHT, type SymbolPen, stubs } from './symbol-pen.ts';

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
