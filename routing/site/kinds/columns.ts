import * as v from 'valibot';
import { rectangleAt } from '../../plane/rectangle.ts';
import { rectangleTurn } from '../place/motion.ts';
import { id, maybe, number, point2, positiveLength, told } from '../schema/schema-parts.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const columnSchema = v.strictObject({
  id,
  at: told(point2, 'Centre.'),
  size: v.strictTuple([positiveLength, positiveLength]),
  rotation: maybe(told(number, 'Degrees.')),
  height: maybe(positiveLength),
});

export type Column = Of<typeof columnSchema>;

export const columns: PlacedKind<typeof columnSchema> = {
  schema: columnSchema,
  one: 'column',
  many: 'columns',
  anyOne: 'a column',
  moved: (column, motion) => ({ ...column, at: motion.point(column.at), ...rectangleTurn(column.rotation, motion) }),
  points: ({ at, size, rotation = 0 }) => rectangleAt(at, size, rotation),
  anchor: ({ at }) => at,
  shape: 'ring',
};

export const columnDocs: KindDocs<typeof columnSchema> = {
  says: 'Columns, posts and bollards.',
  fields: {
    size: 'Width and depth of its section.',
    height: 'Top above grade; 10 ft where absent. At 5 ft or lower it is a bollard.',
  },
  examples: [{ id: 'K1', at: [4.5, 0], size: [1, 1.5], rotation: 15, height: 11 }],
};
