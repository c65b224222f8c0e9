import type { Box } from '../../../routing/plane/box.ts';
import type { DrawnWords, LineLook } from '../../../routing/site/import/imported.ts';
import type { PackedLines } from '../reading/packed-lines.ts';
import { legible } from './legible.ts';
import { type Colors, canvasFor } from './picture.ts';

/** So many points are stroked at one go: the cost of one path grows with the square of what is in it. */
const BATCH = 400;
/** The page is left to breathe after so long, milliseconds. */
const BREATH_MS = 12;
/** Smaller than this, pixels, a thing is a dot. */
const DOT = 0.7;
/** Half of the cross by which a point is marked, pixels. */
const MARK = 3.5;
/** Dashes shorter than this in all, pixels, run together. */
const LEAST_DASH = 6;
/** Smaller than this, pixels, letters cannot be told from one another. */
const LEAST_LETTERS = 3;

/** The lines of a drawing by their looks, so that those that look alike are stroked together. */
export function orderByLook({ looks, lookOf }: PackedLines): Uint32Array {
  const starts = new Uint32Array(looks.length + 1);
  for (const look of lookOf) starts[look + 1]! += 1;
  for (let i = 0; i < looks.length; i++) starts[i + 1]! += starts[i]!;
  const order = new Uint32Array(lookOf.length);
  for (let i = 0; i < lookOf.length; i++) order[starts[lookOf[i]!]!++] = i;
  return order;
}

/** Draws a part of a drawing, so many pixels to a unit, and lets the page go on in between. */
export async function paintLines(
  lines: PackedLines,
  order: Uint32Array,
  words: readonly DrawnWords[],
  part: Box,
  perUnit: number,
  colors: Colors,
): Promise<HTMLCanvasElement> {
  const { canvas, pen } = canvasFor(part, perUnit);
  const { starts, closed, xy, boxes, lookOf, looks } = lines;
  const near = 4 / perUnit;
  const [left, low, right, high] = [part.minX - near, part.minY - near, part.maxX + near, part.maxY + near];
  let look: LineLook | null = null;
  let held = 0;
  let since = performance.now();
  const flush = (): void => {
    if (held === 0 || !look) return;
    held = 0;
    if (look.filled) {
      pen.globalAlpha = 0.3;
      pen.fill('evenodd');
    }
    pen.globalAlpha = look.width > 0 ? 0.6 : 1;
    pen.stroke();
    pen.globalAlpha = 1;
    pen.beginPath();
  };
  pen.beginPath();
  for (const i of order) {
    const [minX, minY, maxX, maxY] = [boxes[4 * i]!, boxes[4 * i + 1]!, boxes[4 * i + 2]!, boxes[4 * i + 3]!];
    if (minX > right || maxX < left || minY > high || maxY < low) continue;
    const own = looks[lookOf[i]!]!;
    if (own !== look) {
      flush();
      look = own;
      take(pen, own, perUnit, colors);
    }
    const begin = starts[i]!;
    const end = starts[i + 1]!;
    const x0 = (xy[2 * begin]! - part.minX) * perUnit;
    const y0 = (part.maxY - xy[2 * begin + 1]!) * perUnit;
    if (end - begin === 1) {
      pen.moveTo(x0 - MARK, y0);
      pen.lineTo(x0 + MARK, y0);
      pen.moveTo(x0, y0 - MARK);
      pen.lineTo(x0, y0 + MARK);
      held += 4;
    } else if ((maxX - minX) * perUnit < DOT && (maxY - minY) * perUnit < DOT) {
      pen.fillRect(x0, y0, 1, 1);
      held += 1;
    } else {
      pen.moveTo(x0, y0);
      for (let at = begin + 1; at < end; at++)
        pen.lineTo((xy[2 * at]! - part.minX) * perUnit, (part.maxY - xy[2 * at + 1]!) * perUnit);
      if (closed[i]) pen.closePath();
      held += end - begin;
    }
    if (held < BATCH) continue;
    flush();
    if (performance.now() - since > BREATH_MS) {
      await breath();
      since = performance.now();
    }
  }
  flush();
  pen.setLineDash([]);
  writeWords(pen, words, part, perUnit, colors.ink);
  return canvas;
}

/** A turn of the page's own work, without the least wait that timers have. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

function take(pen: CanvasRenderingContext2D, look: LineLook, perUnit: number, { ink, dark }: Colors): void {
  const color = look.color === null ? ink : legible(look.color, dark);
  pen.strokeStyle = color;
  pen.fillStyle = color;
  // A quarter of a millimetre is a pixel; what is wide in the drawing is as wide as it is there.
  pen.lineWidth = Math.max(1, Math.min(4, Math.round(look.weight / 0.25)), look.width * perUnit);
  const dash = look.dash.map((part) => Math.max(1, part * perUnit));
  const whole = look.dash.reduce((sum, part) => sum + part, 0) * perUnit;
  pen.setLineDash(whole >= LEAST_DASH && Number.isFinite(whole) ? dash : []);
}

function writeWords(
  pen: CanvasRenderingContext2D,
  words: readonly DrawnWords[],
  part: Box,
  perUnit: number,
  ink: string,
): void {
  pen.fillStyle = ink;
  pen.textBaseline = 'alphabetic';
  for (const { at, height, turn, anchor, width, words: text } of words) {
    const size = height * perUnit;
    // As far as the words can reach: no letter is wider than it is high.
    const reach = height * (text.length + 1);
    if (size < LEAST_LETTERS || at[0] + reach < part.minX || at[0] - reach > part.maxX) continue;
    if (at[1] + reach < part.minY || at[1] - reach > part.maxY) continue;
    pen.save();
    pen.translate((at[0] - part.minX) * perUnit, (part.maxY - at[1]) * perUnit);
    pen.rotate((-turn * Math.PI) / 180);
    pen.textAlign = anchor === 'middle' ? 'center' : anchor;
    // A drawing's height is that of its capitals, about seven tenths of the type's size.
    pen.font = `${size / 0.7}px Overpass, sans-serif`;
    pen.fillText(text, 0, 0, width === undefined ? undefined : width * perUnit);
    pen.restore();
  }
}
