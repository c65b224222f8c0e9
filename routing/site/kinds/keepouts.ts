import * as v from 'valibot';
import { id, length, maybe, outline, told } from '../schema/schema-parts.ts';
import { KEEPOUT_BLOCKS } from '../schema/vocabulary.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const keepoutSchema = v.strictObject({
  id,
  outline,
  from: maybe(told(length, 'Lowest elevation it blocks.')),
  to: maybe(told(length, 'Highest elevation it blocks.')),
  blocks: v.array(v.picklist(KEEPOUT_BLOCKS)),
});

export type Keepout = Of<typeof keepoutSchema>;

export const keepouts: PlacedKind<typeof keepoutSchema> = {
  schema: keepoutSchema,
  one: 'keep-out',
  many: 'keep-outs',
  anyOne: 'a keep-out',
  moved: (keepout, motion) => ({ ...keepout, outline: keepout.outline.map(motion.point) }),
  points: ({ outline }) => outline,
  shape: 'ring',
};

export const keepoutDocs: KindDocs<typeof keepoutSchema> = {
  says: 'Areas that something must keep out of.',
  fields: {
    outline: 'Its corners in order.',
    blocks: 'What may not be in it.',
  },
  examples: [
    {
      id: 'X1',
      outline: [
        [20, 0],
        [24, 0],
        [24, 4],
      ],
      from: -2,
      to: 14,
      blocks: ['raceway', 'drop', 'equipment', 'cord'],
    },
  ],
};
