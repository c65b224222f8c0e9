import type { Point2 } from '../../site.ts';
import { BUDGET, type DrawnWords, type ImportedLine, type ImportFault } from '../imported.ts';
import type { Unseen } from './left-out.ts';
import type { DxfLook, ImportedLayer } from './look.ts';
import { AS_IT_IS, type Placed, placedWithin, planeOf, taken } from './placing.ts';
import type { DxfRecord } from './records.ts';
import { textLines } from './texts/text.ts';
import type { TextLines } from './texts/text-lines.ts';

/** What a walk through a drawing has drawn, and how much of `BUDGET` that took. One walk alone writes to it. */
export interface DrawnSoFar {
  readonly put: (line: ImportedLine) => void;
  readonly words: DrawnWords[];
  readonly skipped: Map<string, number>;
  readonly unseen: Unseen;
  lines: number;
  letters: number;
  /** Entities that were come to, blocks expanded. */
  entities: number;
  points: number;
}

/** Where entities stand: as placed, on the layer of what put them in, with its look. */
export interface EntityPlace {
  readonly placed: Placed;
  readonly layer: ImportedLayer | null;
  readonly look: DxfLook;
  readonly depth: number;
}

/** Nothing is drawn yet; each line is handed to `put`. */
export const nothingDrawn = (put: (line: ImportedLine) => void): DrawnSoFar => ({
  put,
  words: [],
  skipped: new Map(),
  unseen: { paper: 0, layers: new Map(), hidden: 0, cut: 0, clipped: 0, refersTo: new Set() },
  lines: 0,
  letters: 0,
  entities: 0,
  points: 0,
});

/** Notes that an entity of a kind is not drawn. */
export const skip = ({ skipped }: DrawnSoFar, kind: string): void =>
  void skipped.set(kind, (skipped.get(kind) ?? 0) + 1);

/** Notes a file that is referred to, by the last part of its path, of whichever system. */
export const notePath = ({ unseen }: DrawnSoFar, path: string): void =>
  void unseen.refersTo.add(path.split(/[\\/]/).at(-1) || path);

/** Draws a line; false where it leads too far off to be drawn. */
export function drawLine(
  drawn: DrawnSoFar,
  { points, closed, layer, look }: ImportedLine,
  { placed }: Pick<EntityPlace, 'placed'>,
): boolean {
  const here = placed === AS_IT_IS ? points : points.map((point) => taken(placed, point));
  if (!here.every(isNear)) return false;
  drawn.put({ layer, points: here, closed, ...(look && { look }) });
  drawn.lines += 1;
  return true;
}

/** Draws the words of a record. */
export function drawWords(
  drawn: DrawnSoFar,
  record: DxfRecord,
  layer: ImportedLayer,
  place: EntityPlace,
): ImportFault | null {
  const { words, unseen } = drawn;
  const plane = planeOf(record);
  const written = plane && textLines(record);
  if (!plane || !written) {
    skip(drawn, record.kind);
    return null;
  }
  const placed = placedWithin(place.placed, plane);
  const added = written.flatMap((block) =>
    block.lines.flatMap((each, i) => wordsAt(layer.name, placed, block, each, i)),
  );
  drawn.letters += added.reduce((sum, one) => sum + one.words.length, 0);
  if (record.values.reduce((sum, value) => sum + value.length, 0) > BUDGET.note) unseen.cut += 1;
  if (words.length + added.length > BUDGET.words || drawn.letters > BUDGET.letters)
    return { place: `line ${record.line}`, says: `is past ${BUDGET.words.toLocaleString('en-US')} lines of words` };
  words.push(...added);
  return null;
}

const isNear = ([x, y]: Point2): boolean => Math.abs(x) <= BUDGET.coordinate && Math.abs(y) <= BUDGET.coordinate;

/** A line of words where its block is put; none where it comes to nothing there. */
function wordsAt(layer: string, placed: Placed, text: TextLines, line: string, index: number): DrawnWords[] {
  const radians = (text.turn * Math.PI) / 180;
  const [ux, uy] = [Math.cos(radians), Math.sin(radians)];
  const down = index * text.step;
  const from: Point2 = [text.at[0] + down * uy, text.at[1] - down * ux];
  const at = taken(placed, from);
  const along = taken(placed, [from[0] + ux, from[1] + uy]);
  const up = taken(placed, [from[0] - uy, from[1] + ux]);
  const [ax, ay] = [along[0] - at[0], along[1] - at[1]];
  const height = text.height * Math.hypot(up[0] - at[0], up[1] - at[1]);
  // Seen from behind it is written the other way from its other end, so that it covers the same ground.
  const behind = ax * (up[1] - at[1]) - ay * (up[0] - at[0]) < 0;
  const turn = (Math.atan2(behind ? -ay : ay, behind ? -ax : ax) * 180) / Math.PI;
  const anchor = behind ? OTHER_END[text.anchor] : text.anchor;
  const width = (text.width ?? 0) * Math.hypot(ax, ay);
  if (line === '' || !isNear(at) || !(height > 0 && height <= BUDGET.coordinate) || !Number.isFinite(turn)) return [];
  const bounded = width > 0 && width <= BUDGET.coordinate;
  return [{ layer, at, height, turn, anchor, words: line, ...(bounded && { width }) }];
}

const OTHER_END = { left: 'right', middle: 'middle', right: 'left' } as const;
