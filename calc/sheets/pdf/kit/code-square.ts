import { correction, generate } from 'lean-qr';
import type { Area } from './area.ts';
import { BLACK, WHITE } from './ink.ts';
import type { Pen } from './pen.ts';

/** White round a code, modules: as much as its standard (ISO/IEC 18004) asks for. */
const QUIET = 4;

/** Where a code is dark: rows of stretches, in modules from its upper left corner, and how many modules it is wide. */
export interface CodeSquare {
  readonly size: number;
  readonly stretches: readonly { readonly x: number; readonly y: number; readonly length: number }[];
}

/** A text as a QR code of its least size, which stands when a seventh of it is dirt; RangeError for more than one can hold. */
export function codeSquare(text: string): CodeSquare {
  let code: ReturnType<typeof generate>;
  try {
    code = generate(text, { minCorrectionLevel: correction.M });
  } catch {
    throw new RangeError('a text that is longer than a code can hold');
  }
  const { size } = code;
  const stretches: { x: number; y: number; length: number }[] = [];
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      if (!code.get(x, y)) continue;
      const from = x;
      while (code.get(x + 1, y)) x++;
      stretches.push({ x: from, y, length: x + 1 - from });
    }
  return { size, stretches };
}

/** Draws a code with the white round it, as large as goes into a square area. */
export function drawCode(pen: Pen, text: string, area: Area): void {
  const { size, stretches } = codeSquare(text);
  const side = Math.min(area.width, area.height);
  const module = side / (size + 2 * QUIET);
  const top = area.y + side - QUIET * module;
  const left = area.x + QUIET * module;
  pen.fillArea({ x: area.x, y: area.y, width: side, height: side }, WHITE);
  pen.fillAreas(
    stretches.map(({ x, y, length }) => ({
      x: left + x * module,
      y: top - (y + 1) * module,
      width: length * module,
      height: module,
    })),
    BLACK,
  );
}
