import { type Box, boxesMeet } from '../../routing/plane/box.ts';
import type { DrawnWords } from '../../routing/site/import/imported.ts';
import { linesPerLayer, type PackedLines } from './packed-lines.ts';
import { canvasFor, UnderlayFault, type UnderlayPicture } from './picture.ts';
import type { ReadAnswer, ReadRequest } from './read-request.ts';

/** Longest that a drawing may take to be read, milliseconds. */
const READ_MS = 30_000;

/** Reads a DXF or a GeoJSON in a worker of its own. */
export async function readLines(kind: 'dxf' | 'geojson', bytes: Uint8Array): Promise<UnderlayPicture> {
  const answer = await answerOf({ kind, text: textOf(bytes) });
  if (!answer.ok) throw new UnderlayFault(`${answer.fault.place} ${answer.fault.says}`);
  const { lines, words, skipped, feetPerUnit, features, ground, georef } = answer;
  const boxes = boxesOf(lines);
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < boxes.length; i += 4) {
    box.minX = Math.min(box.minX, boxes[i]!);
    box.minY = Math.min(box.minY, boxes[i + 1]!);
    box.maxX = Math.max(box.maxX, boxes[i + 2]!);
    box.maxY = Math.max(box.maxY, boxes[i + 3]!);
  }
  for (const { at, height } of words) {
    box.minX = Math.min(box.minX, at[0] - height);
    box.minY = Math.min(box.minY, at[1] - height);
    box.maxX = Math.max(box.maxX, at[0] + height);
    box.maxY = Math.max(box.maxY, at[1] + height);
  }
  return {
    box,
    feetPerUnit,
    lines,
    ...(features && { features }),
    ...(ground && { ground }),
    ...(georef && { georef }),
    notes: notesOf(kind, lines, words.length, feetPerUnit, skipped),
    render: async (part, perUnit, { ink }) => {
      const { canvas, pen } = canvasFor(part, perUnit);
      const { starts, closed, xy } = lines;
      const near = 2 / perUnit;
      const seen = { minX: part.minX - near, minY: part.minY - near, maxX: part.maxX + near, maxY: part.maxY + near };
      pen.beginPath();
      for (let i = 0; i < closed.length; i++) {
        const own = { minX: boxes[4 * i]!, minY: boxes[4 * i + 1]!, maxX: boxes[4 * i + 2]!, maxY: boxes[4 * i + 3]! };
        if (!boxesMeet(seen, own)) continue;
        for (let at = starts[i]!; at < starts[i + 1]!; at++) {
          const x = (xy[2 * at]! - part.minX) * perUnit;
          const y = (part.maxY - xy[2 * at + 1]!) * perUnit;
          if (at === starts[i]) pen.moveTo(x, y);
          else pen.lineTo(x, y);
        }
        if (closed[i]) pen.closePath();
      }
      pen.strokeStyle = ink;
      pen.lineWidth = 1;
      pen.stroke();
      writeWords(pen, words, part, perUnit, ink);
      return canvas;
    },
    close: () => {},
  };
}

/** Smaller than this, pixels, letters cannot be told from one another. */
const LEAST_LETTERS = 3;

function writeWords(
  pen: CanvasRenderingContext2D,
  words: readonly DrawnWords[],
  part: Box,
  perUnit: number,
  ink: string,
): void {
  pen.fillStyle = ink;
  pen.textBaseline = 'alphabetic';
  for (const { at, height, turn, anchor, words: text } of words) {
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
    pen.fillText(text, 0, 0);
    pen.restore();
  }
}

/** Text as UTF-8, else as the western code page that older drawings are written in. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function answerOf(request: ReadRequest): Promise<ReadAnswer> {
  const worker = new Worker(new URL('./read-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<ReadAnswer>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new UnderlayFault(`it takes longer than ${READ_MS / 1000} seconds to read`)),
      READ_MS,
    );
    worker.onmessage = ({ data }: MessageEvent<ReadAnswer>) => {
      clearTimeout(late);
      resolve(data);
    };
    worker.onerror = () => {
      clearTimeout(late);
      reject(new UnderlayFault('it is more than this browser can read'));
    };
    worker.postMessage(request);
  }).finally(() => worker.terminate());
}

function boxesOf({ closed, starts, xy }: PackedLines): Float64Array {
  const boxes = new Float64Array(4 * closed.length);
  for (let i = 0; i < closed.length; i++) {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let at = starts[i]!; at < starts[i + 1]!; at++) {
      minX = Math.min(minX, xy[2 * at]!);
      maxX = Math.max(maxX, xy[2 * at]!);
      minY = Math.min(minY, xy[2 * at + 1]!);
      maxY = Math.max(maxY, xy[2 * at + 1]!);
    }
    boxes.set([minX, minY, maxX, maxY], 4 * i);
  }
  return boxes;
}

function notesOf(
  kind: 'dxf' | 'geojson',
  lines: PackedLines,
  words: number,
  feetPerUnit: number | null,
  skipped: ReadonlyMap<string, number>,
): readonly string[] {
  const left = [...skipped].sort(([, a], [, b]) => b - a).map(([what, count]) => `${count} ${what}`);
  return [
    `${lines.closed.length.toLocaleString('en-US')} lines on ${linesPerLayer(lines).length} layers${words > 0 ? `, ${words.toLocaleString('en-US')} ${words === 1 ? 'line' : 'lines'} of words` : ''}.`,
    ...(left.length > 0 ? [`Not drawn: ${left.join(', ')}.`] : []),
    ...(kind === 'dxf' && feetPerUnit === null ? ['It does not say its units: set its scale.'] : []),
  ];
}
