import * as v from 'valibot';
import { inPlan } from '../../plane/space.ts';
import { inSpace } from '../place/motion.ts';
import { id, point3 } from '../schema/schema-parts.ts';
import type { Of, PlacedKind } from './kind.ts';

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
