import * as v from 'valibot';
import { id, maybe, outline, told } from '../schema/schema-parts.ts';
import { AISLE_KINDS } from '../schema/vocabulary.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const aisleSchema = v.strictObject({
  id,
  outline,
  kind: maybe(told(v.picklist(AISLE_KINDS), 'What it is for, which decides its clear height; `drive` where absent.')),
});

export type Aisle = Of<typeof aisleSchema>;

export const aisles: PlacedKind<typeof aisleSchema> = {
  schema: aisleSchema,
  one: 'aisle',
  many: 'aisles',
  anyOne: 'an aisle',
  moved: (aisle, motion) => ({ ...aisle, outline: aisle.outline.map(motion.point) }),
  points: ({ outline }) => outline,
  shape: 'ring',
};

export const aisleDocs: KindDocs<typeof aisleSchema> = {
  says: 'Drive aisles, access aisles, walks.',
  fields: {
    outline: 'Its corners in order.',
  },
  examples: [
    {
      id: 'A1',
      outline: [
        [-10, 18],
        [30, 18],
        [30, 42],
        [-10, 42],
      ],
      kind: 'fire',
    },
  ],
};
