import type { Box } from '../../../routing/plane/box.ts';
import type { Point2 } from '../../../routing/site/site.ts';

/** What a detail shows. */
export type DetailKind =
  | 'drop'
  | 'trapeze'
  | 'riser'
  | 'pedestal'
  | 'bollard'
  | 'trench'
  | 'handhole'
  | 'pad'
  | 'stall';

/** How heavy a line is: what is cut, what is seen, what is behind or by others, axes. */
export type DetailInk = 'cut' | 'conduit' | 'edge' | 'thin' | 'hidden' | 'axis';

/** A line of a detail, in feet, y up. */
export interface DetailLine {
  readonly points: readonly Point2[];
  readonly ink: DetailInk;
  readonly closed?: boolean;
}

export interface DetailCircle {
  readonly at: Point2;
  readonly radius: number;
  readonly ink: DetailInk;
}

export type Hatch = 'earth' | 'concrete' | 'paving' | 'fill';

/** An upright rectangle that is hatched by what it is made of. */
export interface DetailRegion {
  readonly box: Box;
  readonly hatch: Hatch;
}

/** A place that a dimension is taken from: along its line, and where its extension line starts across it. Feet. */
export interface DetailMark {
  readonly at: number;
  readonly from: number;
}

/** Dimensions in one line beside the drawing; those of a higher level lie farther out. */
export interface DetailDimension {
  readonly side: 'left' | 'bottom' | 'top';
  readonly level: number;
  readonly marks: readonly DetailMark[];
  /** Feet: where the part of the drawing ends that it is laid beside; the edge of all of it where absent. */
  readonly edge?: number;
}

/** Words with a leader to a place. */
export interface Callout {
  readonly at: Point2;
  readonly text: string;
}

/** A drawing of how one thing is built, in feet, from the site's own sizes; it knows no paper. */
export interface Detail {
  readonly kind: DetailKind;
  readonly title: string;
  /** Elements that are built so: the one that is drawn first. */
  readonly of: readonly string[];
  readonly regions: readonly DetailRegion[];
  readonly lines: readonly DetailLine[];
  readonly circles: readonly DetailCircle[];
  readonly dimensions: readonly DetailDimension[];
  readonly callouts: readonly Callout[];
  /** What others must check, and what is not to be read from it. */
  readonly notes: readonly string[];
}

export const boxOfFeet = (minX: number, minY: number, maxX: number, maxY: number): Box => ({ minX, minY, maxX, maxY });

/** The four edges of a rectangle. */
export const edges = ({ minX, minY, maxX, maxY }: Box, ink: DetailInk): DetailLine => ({
  points: [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ],
  ink,
  closed: true,
});

export const segment = (from: Point2, to: Point2, ink: DetailInk): DetailLine => ({ points: [from, to], ink });

/** Finished grade with the ground under it. */
export function grade(
  minX: number,
  maxX: number,
  deep: number,
): { readonly regions: readonly DetailRegion[]; readonly lines: readonly DetailLine[] } {
  return {
    regions: [{ box: boxOfFeet(minX, -deep, maxX, 0), hatch: 'earth' }],
    lines: [segment([minX, 0], [maxX, 0], 'cut')],
  };
}

/** Dimensions from one height up or down to each of the others, the shortest nearest to the drawing. */
export function fromBase(
  side: DetailDimension['side'],
  base: DetailMark,
  others: readonly DetailMark[],
  level = 0,
): readonly DetailDimension[] {
  const far = others
    .filter(({ at }) => Math.abs(at - base.at) > LEAST)
    .sort((a, b) => Math.abs(a.at - base.at) - Math.abs(b.at - base.at));
  const distinct = far.filter(({ at }, i) => i === 0 || Math.abs(at - far[i - 1]!.at) > LEAST);
  return distinct.map((mark, i) => ({ side, level: level + i, marks: [base, mark].sort((a, b) => a.at - b.at) }));
}

/** Nothing shorter is dimensioned, feet. */
const LEAST = 0.02;

/** All that a detail draws lies in this box, feet; dimensions and words stand round it. */
export function detailExtent({ regions, lines, circles }: Pick<Detail, 'regions' | 'lines' | 'circles'>): Box {
  const points: Point2[] = [
    ...lines.flatMap((line) => line.points),
    ...regions.flatMap(({ box }): Point2[] => [
      [box.minX, box.minY],
      [box.maxX, box.maxY],
    ]),
    ...circles.flatMap(({ at: [x, y], radius }): Point2[] => [
      [x - radius, y - radius],
      [x + radius, y + radius],
    ]),
  ];
  return boxOfFeet(
    Math.min(...points.map(([x]) => x)),
    Math.min(...points.map(([, y]) => y)),
    Math.max(...points.map(([x]) => x)),
    Math.max(...points.map(([, y]) => y)),
  );
}

/** `D01, typical of 12`. */
export const typicalOf = (ids: readonly string[]): string =>
  ids.length > 1 ? `${ids[0]}, typical of ${ids.length}` : (ids[0] ?? '');
