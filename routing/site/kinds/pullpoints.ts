import * as v from 'valibot';
import { inPlan } from '../../plane/space.ts';
import { inSpace } from '../place/motion.ts';
import { id, point3 } from '../schema/schema-parts.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const pullpointSchema = v.strictObject({ id, at: point3 });

export type Pullpoint = Of<typeof pullpointSchema>;

export const pullpoints: PlacedKind<typeof pullpointSchema> = {
  schema: pullpointSchema,
  one: 'pull point',
  many: 'pull points',
  anyOne: 'a pull point',
  moved: (pullpoint, motion) => ({ ...pullpoint, at: inSpace(pullpoint.at, motion) }),
  points: ({ at }) => [inPlan(at)],
  shape: 'point',
};

export const pullpointDocs: KindDocs<typeof pullpointSchema> = {
  says: 'Pull boxes, conduit bodies and handholes on raceways.',
  fields: {
    at: 'Its place, on a raceway.',
  },
  examples: [{ id: 'Q1', at: [-12, 0, 10] }],
};
