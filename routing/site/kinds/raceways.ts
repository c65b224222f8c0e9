import * as v from 'valibot';
import { inPlan } from '../../plane/space.ts';
import { inSpace } from '../place/motion.ts';
import { id, maybe, nonNegativeLength, number, point3, told } from '../schema/schema-parts.ts';
import { METHODS, PLACES, SURFACES } from '../schema/vocabulary.ts';
import { type KindDocs, type Of, type PlacedKind, withoutVertices } from './kind.ts';

export const racewaySchema = v.strictObject({
  id,
  path: v.pipe(v.array(point3), v.minLength(2)),
  method: v.picklist(METHODS),
  place: v.picklist(PLACES),
  /** Over an underground raceway; asphalt where absent. */
  surface: maybe(v.picklist(SURFACES)),
  ambientC: maybe(told(number, 'Ambient temperature in it, degrees C, in place of the rule for its place.')),
  aboveRoof: maybe(told(nonNegativeLength, 'Height above a roof that it lies over in the sun; absent elsewhere.')),
});

export type Raceway = Of<typeof racewaySchema>;

export const raceways: PlacedKind<typeof racewaySchema> = {
  schema: racewaySchema,
  one: 'raceway',
  many: 'raceways',
  anyOne: 'a raceway',
  moved: (raceway, motion) => ({ ...raceway, path: raceway.path.map((at) => inSpace(at, motion)) }),
  points: ({ path }) => path.map(inPlan),
  shape: 'line',
  parts: {
    of: ({ path }) => path.map((at, index) => ({ part: { kind: 'vertex', index }, at })),
    moved: (raceway, part, to) => ({
      ...raceway,
      path: raceway.path.map((at, index) => (index === part.index ? to(at) : at)),
    }),
    without: (raceway, parts) => withoutVertices(raceway, 'path', parts, 2),
  },
};

export const racewayDocs: KindDocs<typeof racewaySchema> = {
  says: 'Ways that conduits may take.',
  fields: {
    path: 'Its corners from end to end, each with its elevation; ends that touch are joined.',
    method: 'What conduit is used in it.',
    place: 'Whether it hangs, lies on a surface, or lies in the ground.',
    surface: 'What is cut and patched over one in the ground.',
  },
  examples: [
    {
      id: 'R1',
      path: [
        [-12, 0, 6],
        [-12, 0, 10],
        [30, 0, 10],
      ],
      method: 'EMT',
      place: 'overhead',
      surface: 'concrete',
      ambientC: 45,
      aboveRoof: 0.05,
    },
  ],
};
