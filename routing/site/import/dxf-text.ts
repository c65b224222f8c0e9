import type { Point2 } from '../site.ts';
import { type DxfRecord, flagsOf, numberOf, pointsOf, textOf } from './dxf-records.ts';

/** Words of a drawing as one entity writes them, in its own coordinates. */
export interface TextLines {
  /** Where the first line's base stands. */
  readonly at: Point2;
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  readonly anchor: 'left' | 'middle' | 'right';
  readonly lines: readonly string[];
}

/** No note of a drawing is longer; what is past it is left out. */
const MOST_CHARACTERS = 2000;
const MOST_LINES = 60;
/** From line to line, heights (open DXF reference: 5/3). */
export const LINE_STEP = 5 / 3;

/** The words of a TEXT, an ATTRIB or an MTEXT; null for other kinds and where it says nothing or is damaged. */
export function textLines(record: DxfRecord): TextLines | null {
  const made = record.kind === 'MTEXT' ? manyLines(record) : ONE_LINE.has(record.kind) ? oneLine(record) : null;
  if (!made) return null;
  const { at, height, turn } = made;
  const sound = [...at, height, turn].every(Number.isFinite) && height > 0;
  return sound && made.lines.some((line) => line !== '') ? made : null;
}

const ONE_LINE = new Set(['TEXT', 'ATTRIB']);
const INVISIBLE = 1;

function oneLine(record: DxfRecord): TextLines | null {
  if (record.kind === 'ATTRIB' && flagsOf(record) & INVISIBLE) return null;
  const across = numberOf(record, 72, 0);
  const up = numberOf(record, record.kind === 'ATTRIB' ? 74 : 73, 0);
  const height = numberOf(record, 40, Number.NaN);
  // Anything but "left on the base line" stands by its second point.
  const stands = across !== 0 || up !== 0 ? pointsOf(record, 11)[0] : undefined;
  const at = stands ?? pointsOf(record, 10)[0];
  if (!at) return null;
  const turn = numberOf(record, 50, 0);
  // 3 and 5 fit between two points, 4 is the middle of the letters.
  const anchor = across === 1 || across === 4 ? 'middle' : across === 2 ? 'right' : 'left';
  const down = up === 3 ? 1 : up === 2 || across === 4 ? 0.5 : 0;
  return {
    at: moved(across === 3 || across === 5 ? (pointsOf(record, 10)[0] ?? at) : at, turn, -down * height),
    height,
    turn,
    anchor,
    lines: [plainWords(textOf(record, 1) ?? '').slice(0, MOST_CHARACTERS)],
  };
}

function manyLines(record: DxfRecord): TextLines | null {
  const [at] = pointsOf(record, 10);
  const height = numberOf(record, 40, Number.NaN);
  if (!at) return null;
  const [way] = pointsOf(record, 11);
  const turn = way ? (Math.atan2(way[1], way[0]) * 180) / Math.PI : numberOf(record, 50, 0);
  const parts = record.values.filter((_, i) => record.codes[i] === 3 || record.codes[i] === 1);
  const lines = formattedLines(parts.join('').slice(0, 4 * MOST_CHARACTERS)).slice(0, MOST_LINES);
  // 1 to 3 hang from the top, 4 to 6 stand about the middle, 7 to 9 on the base; in each left, middle, right.
  const attachment = Math.min(9, Math.max(1, Math.trunc(numberOf(record, 71, 1)) || 1));
  const whole = height * (1 + (lines.length - 1) * LINE_STEP);
  const down = attachment <= 3 ? height : attachment <= 6 ? height - whole / 2 : height - whole;
  return {
    at: moved(at, turn, -down),
    height,
    turn,
    anchor: (['left', 'middle', 'right'] as const)[(attachment - 1) % 3]!,
    lines,
  };
}

/** A point moved up by so much in the sense of letters that are turned. */
const moved = ([x, y]: Point2, turn: number, up: number): Point2 => {
  const radians = (turn * Math.PI) / 180;
  return [x - up * Math.sin(radians), y + up * Math.cos(radians)];
};

const SIGNS = new Map([
  ['d', '°'],
  ['p', '±'],
  ['c', '⌀'],
  ['%', '%'],
]);

/** `%%d` and the like as signs; underlines and what is no letter are dropped. */
const plainWords = (text: string): string =>
  text
    .replace(/%%(\d{3})/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/%%([a-z%])/gi, (_, sign: string) => SIGNS.get(sign.toLowerCase()) ?? '')
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is dropped
    .replace(/[\u0000-\u001f\u007f]/g, ' ');

/** The lines of an MTEXT without its formatting: fonts, heights, colors and the like are dropped, a stack is `a/b`. */
function formattedLines(text: string): readonly string[] {
  const KEPT = '\u0001';
  return text
    .replace(/\\([\\{}])/g, (_, sign: string) => KEPT + sign.charCodeAt(0).toString(16).padStart(2, '0'))
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/\\S([^;]{0,80});/g, (_, stack: string) => stack.replace(/[\^#]/, '/').replace(/\s*\/\s*/, '/'))
    .replace(/\\[ACFHQTWfp][^;\\{}]{0,120};/g, '')
    .replace(/\\[LlOoKkNX]/g, '')
    .replaceAll('\\~', ' ')
    .replace(/[{}]/g, '')
    .split(/\\P/)
    .map((line) =>
      plainWords(
        // biome-ignore lint/suspicious/noControlCharactersInRegex: the mark of what was kept
        line.replace(/\u0001([0-9a-f]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))),
      ).trim(),
    );
}
