import * as v from 'valibot';
import type { Point2 } from '../../plane/point.ts';
import { tidy } from '../file/tidy.ts';
import { id, length, point2, told } from '../schema/schema-parts.ts';
import { flat, type KindDocs, type Of, type PlacedKind } from './kind.ts';

export const dimensionSchema = v.strictObject({
  id,
  from: point2,
  to: point2,
  offset: told(
    length,
    'How far its line lies to the left of the way from `from` to `to`; to the right where negative.',
  ),
});

export type Dimension = Of<typeof dimensionSchema>;

export const dimensions: PlacedKind<typeof dimensionSchema> = {
  schema: dimensionSchema,
  one: 'dimension',
  many: 'dimensions',
  anyOne: 'a dimension',
  moved: (dimension, { point, mirrors }) => ({
    ...dimension,
    from: point(dimension.from),
    to: point(dimension.to),
    offset: mirrors && dimension.offset !== 0 ? -dimension.offset : dimension.offset,
  }),
  points: (dimension) => [dimension.from, ...dimensionLine(dimension), dimension.to],
  shape: 'line',
  remark: true,
  parts: {
    of: (dimension) => [
      { part: { kind: 'start' }, at: dimension.from },
      { part: { kind: 'end' }, at: dimension.to },
      { part: { kind: 'line' }, at: middleOf(dimensionLine(dimension)) },
    ],
    moved: (dimension, { kind }, to) => {
      if (kind === 'start') return { ...dimension, from: flat(to, dimension.from) };
      if (kind === 'end') return { ...dimension, to: flat(to, dimension.to) };
      const [nx, ny] = leftOf(dimension);
      const [x, y] = flat(to, middleOf(dimensionLine(dimension)));
      return { ...dimension, offset: tidy((x - dimension.from[0]) * nx + (y - dimension.from[1]) * ny) };
    },
    without: () => null,
  },
};

export const dimensionDocs: KindDocs<typeof dimensionSchema> = {
  says: 'Dimensions on the plan.',
  fields: {
    from: 'One end of what is measured.',
    to: 'The other end.',
  },
  examples: [{ id: 'DIM1', from: [0, 0], to: [9.5, 0], offset: -3.5 }],
};

/** One foot to the left of the way; nowhere where both ends are one place. */
function leftOf({ from, to }: Pick<Dimension, 'from' | 'to'>): Point2 {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const away = Math.hypot(dx, dy);
  return away === 0 ? [0, 0] : [-dy / away, dx / away];
}

const middleOf = ([a, b]: readonly [Point2, Point2]): Point2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** The ends of the line that carries the figure. */
export function dimensionLine(dimension: Dimension): readonly [Point2, Point2] {
  const { from, to, offset } = dimension;
  const [nx, ny] = leftOf(dimension);
  return [
    [from[0] + offset * nx, from[1] + offset * ny],
    [to[0] + offset * nx, to[1] + offset * ny],
  ];
}

/** Room between what is measured and its extension lines, and what these reach past the line, feet. */
const GAP = 0.3;
const PAST = 0.4;

/** The lines from what is measured to the line that carries the figure; none where that lies on it. */
export function extensionLines({ from, to, offset }: Dimension): readonly (readonly [Point2, Point2])[] {
  if (Math.abs(offset) <= GAP) return [];
  const [nx, ny] = leftOf({ from, to });
  const side = Math.sign(offset);
  const along = ([x, y]: Point2, by: number): Point2 => [x + by * nx, y + by * ny];
  return [from, to].map((at) => [along(at, side * GAP), along(at, offset + side * PAST)] as const);
}
