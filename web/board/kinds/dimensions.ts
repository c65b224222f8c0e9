import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import {
  type Dimension,
  dimensionLine,
  extensionLines,
  dimensions as inFile,
} from '../../../routing/site/kinds/dimensions.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { PlainAction } from '../draw/draft.ts';
import { lettering, namePx } from '../painting/ink.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface DimensionOnBoard extends ElementMark<'dimensions'> {
  readonly dimension: Dimension;
  readonly line: readonly [Point2, Point2];
  readonly extensions: readonly (readonly [Point2, Point2])[];
  /** Feet. */
  readonly length: number;
}

const markOf = kept(
  (dimension: Dimension): DimensionOnBoard => ({
    list: 'dimensions',
    id: dimension.id,
    dimension,
    line: dimensionLine(dimension),
    extensions: extensionLines(dimension),
    length: Math.hypot(dimension.to[0] - dimension.from[0], dimension.to[1] - dimension.from[1]),
    ...widened(boxOf(inFile.points(dimension)), 1),
  }),
);

/** Pixels that a tick reaches to each side. */
const TICK = 5;

/** Dimensions: the line between two ticks, its figure over its middle, read from below or from the right. */
function drawDimensions(pen: BoardPen, frame: Frame, marks: readonly DimensionOnBoard[]): void {
  const { scale, left, top, ink, units, chosen } = frame;
  pen.strokeStyle = ink.ink;
  pen.lineWidth = chosen ? 2 : 0.9;
  pen.beginPath();
  for (const { line, extensions } of marks) {
    for (const each of [line, ...extensions]) traceLine(pen, frame, each);
    const slant = Math.atan2(line[1][1] - line[0][1], line[1][0] - line[0][0]) + Math.PI / 4;
    for (const [x, y] of line) {
      const [px, py] = [left + x * scale, top - y * scale];
      pen.moveTo(px - TICK * Math.cos(slant), py + TICK * Math.sin(slant));
      pen.lineTo(px + TICK * Math.cos(slant), py - TICK * Math.sin(slant));
    }
  }
  pen.stroke();
  pen.font = lettering(namePx(scale));
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.lineJoin = 'round';
  for (const {
    line: [a, b],
    length,
  } of marks) {
    const words = printLength(length, units);
    if (length === 0 || pen.measureText(words).width + 8 > length * scale) continue;
    const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
    const flipped = angle > Math.PI / 2 + 1e-9 || angle <= -Math.PI / 2 + 1e-9;
    pen.save();
    pen.translate(left + ((a[0] + b[0]) / 2) * scale, top - ((a[1] + b[1]) / 2) * scale);
    pen.rotate(-(flipped ? angle + Math.PI : angle));
    pen.lineWidth = 3.5;
    pen.strokeStyle = ink.paper;
    pen.strokeText(words, 0, -4);
    pen.fillStyle = ink.ink;
    pen.fillText(words, 0, -4);
    pen.restore();
  }
}

export const dimensions: BoardKind<'dimensions', DimensionOnBoard> = {
  mark: markOf,
  pictures: [{ name: 'dimensions', over: 255, from: 1.4, draw: drawDimensions }],
  hold: { rank: 45, tour: 94, rides: true, named: true },
  aims: ({ id, dimension: { from, to } }, { end }) => {
    end(from, `start of ${id}`);
    end(to, `end of ${id}`);
  },
  handle: ({ kind }) => ({ shape: kind === 'line' ? 'round' : 'square', aside: [0, 0] }),
};

export interface DimensionOptions {
  /** To the left of the way, feet; to the right where negative. */
  readonly offset: number;
}

export const dimensionAction: PlainAction<DimensionOptions> = {
  name: 'Dimension',
  key: 'I',
  draws: 'a dimension',
  first: { offset: 3 },
  makes: {
    list: 'dimensions',
    letters: 'DIM',
    shape: 'line',
    presses: ['Press where it is measured from.', 'Press where it is measured to.'],
    made: (id, [from, to], { offset }) => ({ id, from: from!, to: to!, offset }),
    turns: { option: 'offset', does: 'other side' },
  },
};
