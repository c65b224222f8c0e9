import { deltaCorner, scalloped } from '../../../calc/sheets/drawing/revision-clouds.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import type { Cloud } from '../../../routing/site/kinds/clouds.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { PlainAction } from '../draw/draft.ts';
import { lettering, namePx } from '../painting/ink.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceOutline } from '../pictures/outline.ts';
import { toSegment } from '../scene/near.ts';
import type { BoardKind, ElementMark } from './kind.ts';

/** About the width of a scallop, feet, as on the sheets. */
const SCALLOP = 2;
/** Room for the delta beside the outline, feet. */
const DELTA = 2.2;

export interface CloudMark extends ElementMark<'clouds'> {
  readonly cloud: Cloud;
  readonly scallops: readonly Point2[];
  /** Where its delta stands. */
  readonly corner: Point2;
}

const markOf = kept((cloud: Cloud): CloudMark => {
  const box = boxOf(cloud.outline);
  return {
    list: 'clouds',
    id: cloud.id,
    cloud,
    scallops: scalloped(cloud.outline, SCALLOP),
    corner: deltaCorner(cloud.outline),
    ...widened(box, DELTA),
  };
});

/** Clouds: scallops along their outline, and the delta of their revision. */
function drawClouds(pen: BoardPen, frame: Frame, marks: readonly CloudMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  pen.strokeStyle = ink.ink;
  pen.lineWidth = chosen ? 2.6 : 1.4;
  pen.lineJoin = 'round';
  pen.beginPath();
  for (const { scallops } of marks) traceOutline(pen, frame, scallops);
  pen.stroke();
  const px = namePx(scale);
  pen.font = lettering(px, 600);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.fillStyle = ink.ink;
  for (const { cloud, corner } of marks) {
    if (cloud.mark === '') continue;
    const [x, y] = [left + (corner[0] + 1.2) * scale, top - (corner[1] + 0.3) * scale];
    const half = Math.max(px * 0.9, pen.measureText(cloud.mark).width * 0.9);
    pen.beginPath();
    pen.moveTo(x - half, y + px * 0.3);
    pen.lineTo(x + half, y + px * 0.3);
    pen.lineTo(x, y + px * 0.3 - 1.75 * half);
    pen.closePath();
    pen.stroke();
    pen.fillText(cloud.mark, x, y);
  }
}

export const clouds: BoardKind<'clouds', CloudMark> = {
  mark: markOf,
  pictures: [{ name: 'clouds', over: 252, draw: drawClouds }],
  // Taken by its line: what lies within it stays in reach.
  hold: {
    rank: 55,
    tour: 96,
    wide: true,
    ground: true,
    distance: ({ cloud: { outline } }, at) =>
      Math.min(...outline.map((corner, i) => toSegment(at, corner, outline[(i + 1) % outline.length]!))),
  },
  aims: ({ id, cloud }, { end }) => {
    for (const corner of cloud.outline) end(corner, `corner of ${id}`);
  },
};

export interface CloudOptions {
  readonly mark: string;
}

export const cloudAction: PlainAction<CloudOptions> = {
  name: 'Cloud',
  key: 'U',
  draws: 'a cloud',
  first: { mark: '1' },
  grounded: true,
  makes: {
    list: 'clouds',
    letters: 'CL',
    shape: 'outline',
    presses: [],
    made: (id, corners, { mark }) => ({ id, outline: [...corners], mark }),
  },
};
