import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, widened } from '../../../routing/plane/box.ts';
import { BOUNDARY_WORDS, type BoundaryKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Boundary, Point2 } from '../../../routing/site/site.ts';
import type { PlainAction } from '../draw/draft.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';
import { halo } from '../pictures/stalls/drops.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface BoundaryMark extends ElementMark<'boundaries'> {
  readonly boundary: Boundary;
  /** Where its name stands: the middle of its longest straight. */
  readonly middle: Point2;
}

const markOf = kept((boundary: Boundary): BoundaryMark => {
  const { path } = boundary;
  const far = (i: number): number => Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  let longest = 1;
  for (let i = 2; i < path.length; i++) if (far(i) > far(longest)) longest = i;
  const [[ax, ay], [bx, by]] = [path[longest - 1]!, path[longest]!];
  return {
    list: 'boundaries',
    id: boundary.id,
    boundary,
    middle: [(ax + bx) / 2, (ay + by) / 2],
    ...widened(boxOf(path), 2),
  };
});

const isOfLot = ({ boundary: { kind = 'property' } }: BoundaryMark): boolean =>
  kind === 'property' || kind === 'right-of-way';

/** Boundaries: those of the lot with two short dashes between long ones, others with one; each with its name. */
function drawBoundaries(pen: BoardPen, frame: Frame, marks: readonly BoundaryMark[]): void {
  const { left, top, scale, ink, chosen } = frame;
  for (const ofLot of [true, false]) {
    const own = marks.filter((mark) => isOfLot(mark) === ofLot);
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
  for (const { boundary, middle } of marks)
    halo(pen, frame, calledOn(boundary), left + middle[0] * scale + 8, top - middle[1] * scale - 10, 600, ink.ink);
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
