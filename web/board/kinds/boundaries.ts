import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import { BOUNDARY_WORDS, type BoundaryKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Boundary, Point2 } from '../../../routing/site/site.ts';
import type { PlainAction } from '../draw/draft.ts';
import { lettering, namePx } from '../painting/ink.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';
import { halo } from '../pictures/stalls/drops.ts';
import { BUBBLE, type Bubble, bubblesOf } from '../pictures/steel/gridlines.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface BoundaryMark extends ElementMark<'boundaries'> {
  readonly boundary: Boundary;
  /** Its longest straight, where its name stands. */
  readonly straight: readonly [Point2, Point2];
}

const markOf = kept((boundary: Boundary): BoundaryMark => {
  const { path } = boundary;
  const far = (i: number): number => Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  let longest = 1;
  for (let i = 2; i < path.length; i++) if (far(i) > far(longest)) longest = i;
  return {
    list: 'boundaries',
    id: boundary.id,
    boundary,
    straight: [path[longest - 1]!, path[longest]!],
    ...widened(boxOf(path), 2),
  };
});

/** Whether a boundary is the lot's own edge, and not a line of some right upon it. */
export const isOfLot = (kind: BoundaryKind): boolean => kind === 'property' || kind === 'right-of-way';

/** Boundaries: those of the lot with two short dashes between long ones, others with one; each with its name. */
function drawBoundaries(pen: BoardPen, frame: Frame, marks: readonly BoundaryMark[]): void {
  const { left, top, scale, ink, chosen } = frame;
  for (const ofLot of [true, false]) {
    const own = marks.filter(({ boundary: { kind = 'property' } }) => isOfLot(kind) === ofLot);
    pen.strokeStyle = ofLot ? ink.ink : ink.existing;
    pen.lineWidth = chosen ? 3 : ofLot ? 1.6 : 1;
    pen.setLineDash(ofLot ? [26, 4, 4, 4, 4, 4] : [18, 4, 4, 4]);
    pen.beginPath();
    for (const { boundary } of own) traceLine(pen, frame, boundary.path);
    pen.stroke();
  }
  pen.setLineDash([]);
  if (scale < LEAST_NAMED) return;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  const px = namePx(scale);
  pen.font = lettering(px, 600);
  const bubbles = bubblesOf(frame, frame.scene.site.gridlines, frame.scene.extent);
  for (const { boundary, straight } of marks) {
    const words = calledOn(boundary);
    const onScreen = straight.map(([x, y]) => [left + x * scale, top - y * scale] as const);
    const [x, y] = namePlace(onScreen, pen.measureText(words).width, px, bubbles);
    halo(pen, frame, words, x, y, 600, ink.ink);
  }
}

/** Where along a straight a name is tried, from its middle out. */
const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];

/**
 * Where a name begins, the middle of its height: beside the middle of its straight, or the nearest place along it that no
 * bubble of a gridline covers, above the line or below.
 */
function namePlace(
  straight: readonly (readonly [number, number])[],
  wide: number,
  px: number,
  bubbles: readonly Bubble[],
): readonly [number, number] {
  const [[ax, ay], [bx, by]] = straight as [readonly [number, number], readonly [number, number]];
  const places = ALONG.flatMap((share) =>
    [-10, 10 + px / 2].map((down) => [ax + share * (bx - ax) + 8, ay + share * (by - ay) + down] as const),
  );
  const isClear = ([x, y]: readonly [number, number]): boolean =>
    bubbles.every(
      (bubble) =>
        bubble.x + BUBBLE < x ||
        bubble.x - BUBBLE > x + wide ||
        bubble.y + BUBBLE < y - px / 2 ||
        bubble.y - BUBBLE > y + px / 2,
    );
  return places.find(isClear) ?? places[0]!;
}

/** Pixels to a foot below which names are left out. */
const LEAST_NAMED = 1.4;

const calledOn = ({ kind = 'property', name }: Boundary): string =>
  name === undefined ? BOUNDARY_WORDS[kind] : `${BOUNDARY_WORDS[kind]}: ${name}`;

export const boundaries: BoardKind<'boundaries', BoundaryMark> = {
  mark: markOf,
  pictures: [{ name: 'boundaries', over: 82, draw: drawBoundaries }],
  // Taken right on the line: it runs beside much else and is moved seldom.
  hold: { rank: 62, tour: 97, reach: 1 / 3, wide: true, ground: true, named: true },
  aims: ({ id, boundary }, { end }) => {
    for (const corner of boundary.path) end(corner, `corner of ${id}`);
  },
};

export interface BoundaryOptions {
  readonly kind: BoundaryKind;
}

export const boundaryAction: PlainAction<BoundaryOptions> = {
  name: 'Boundary',
  key: 'Y',
  draws: 'a boundary',
  first: { kind: 'property' },
  grounded: true,
  makes: {
    list: 'boundaries',
    letters: 'BL',
    shape: 'line',
    presses: ['Press where the boundary begins.', 'Press where it ends.'],
    made: (id, [from, to], { kind }) => ({ id, path: [from!, to!], ...(kind !== 'property' && { kind }) }),
  },
};
