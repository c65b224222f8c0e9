import { direction } from '../../../routing/plane/direction.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { ByteText } from '../byte-text.ts';
import type { DimensionMark } from '../lettered/mark.ts';
import { type EntityLook, type EntityWriter, entityWriter } from './entity-writer.ts';

/** How dimensions of one scale are lettered; lengths in units of the space that they stand in. */
export interface DimStyle {
  readonly name: string;
  readonly letter: number;
  readonly tick: number;
  readonly past: number;
  /** From what is measured to what is written: inches, or metres. */
  readonly factor: number;
  readonly isMetric: boolean;
}

/** A block of a file, with a block record of its own. */
export interface WrittenBlock {
  readonly name: string;
  readonly record: string;
  readonly text: ByteText;
  /** It has no name that a person gave it. */
  readonly isAnonymous: boolean;
  readonly hasAttributes?: boolean;
}

/** A DIMENSION between two points along a line, and the block in which it is drawn: its lines, ticks and figure. */
export function addDimension(
  writer: EntityWriter,
  mark: DimensionMark,
  look: EntityLook,
  {
    style,
    next,
    name,
    isOnPaper,
  }: { readonly style: DimStyle; readonly next: () => string; readonly name: string; readonly isOnPaper: boolean },
): WrittenBlock {
  const record = next();
  const { from, to, fromOrigin, toOrigin, turn, figure } = mark;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const middle: Point2 = figure ? middleOf(figure) : [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  writer.other('DIMENSION', look, (tags) => {
    tags.add([100, 'AcDbDimension'], [2, name]);
    tags.point(10, to);
    tags.point(11, middle);
    // Turned, with a block of its own; its letters stand where they were put.
    tags.add([70, 32 + 128], [71, 5], [42, length], [1, figure ? '' : ' '], [3, style.name]);
    tags.add([100, 'AcDbAlignedDimension']);
    tags.point(13, fromOrigin);
    tags.point(14, toOrigin);
    tags.add([50, ((turn % 360) + 360) % 360], [100, 'AcDbRotatedDimension']);
  });
  const block = entityWriter(next, record, isOnPaper);
  drawDimension(block, mark, look);
  return { name, record, text: block.written, isAnonymous: true };
}

function drawDimension(block: EntityWriter, mark: DimensionMark, look: EntityLook): void {
  const { from, to, fromOrigin, toOrigin, turn, figure, tick, past } = mark;
  const [ux, uy] = direction(turn);
  const moved = ([x, y]: Point2, by: number): Point2 => [x + by * ux, y + by * uy];
  block.polyline([moved(from, -past), moved(to, past)], false, look);
  const [tx, ty] = direction(turn + 45);
  for (const [end, origin] of [
    [from, fromOrigin],
    [to, toOrigin],
  ] as const) {
    block.polyline(
      [
        [end[0] - tick * tx, end[1] - tick * ty],
        [end[0] + tick * tx, end[1] + tick * ty],
      ],
      false,
      { ...look, weight: 0.35 },
    );
    const off = Math.hypot(end[0] - origin[0], end[1] - origin[1]);
    if (off < 1e-9) continue;
    const on = (off + past) / off;
    block.polyline(
      [origin, [origin[0] + on * (end[0] - origin[0]), origin[1] + on * (end[1] - origin[1])]],
      false,
      look,
    );
  }
  if (figure) block.text({ ...figure, style: 'LETTERS' }, look);
}

function middleOf({ at, width, height, turn }: NonNullable<DimensionMark['figure']>): Point2 {
  const [ux, uy] = direction(turn);
  return [at[0] + (width / 2) * ux - (height / 2) * uy, at[1] + (width / 2) * uy + (height / 2) * ux];
}
