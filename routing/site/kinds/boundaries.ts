import * as v from 'valibot';
import { filledText, id, maybe, nonNegativeLength, point2, told } from '../schema/schema-parts.ts';
import { BOUNDARY_KINDS } from '../schema/vocabulary.ts';
import { flat, type KindDocs, type Of, type PlacedKind, withoutVertices } from './kind.ts';

/** Letters that the name of a boundary has room for along its line. */
export const MOST_BOUNDARY_NAME = 80;
/** Corners that a boundary may have. */
const MOST_CORNERS = 1000;

export const boundarySchema = v.strictObject({
  id,
  path: v.pipe(v.array(point2), v.minLength(2), v.maxLength(MOST_CORNERS)),
  kind: maybe(told(v.picklist(BOUNDARY_KINDS), 'What it bounds; `property` where absent.')),
  name: maybe(
    told(
      v.pipe(filledText, v.maxLength(MOST_BOUNDARY_NAME)),
      'What is lettered along it, such as the name of a street.',
    ),
  ),
  setback: maybe(told(nonNegativeLength, 'How far new equipment must stay from it, where something asks for that.')),
});

export type Boundary = Of<typeof boundarySchema>;

export const boundaries: PlacedKind<typeof boundarySchema> = {
  schema: boundarySchema,
  one: 'boundary',
  many: 'boundaries',
  anyOne: 'a boundary',
  alsoCalled: ({ name }) => name,
  moved: (boundary, { point }) => ({ ...boundary, path: boundary.path.map(point) }),
  points: ({ path }) => path,
  shape: 'line',
  parts: {
    of: ({ path }) => path.map((at, index) => ({ part: { kind: 'vertex', index }, at })),
    moved: (boundary, part, to) => ({
      ...boundary,
      path: boundary.path.map((at, index) => (index === part.index ? flat(to, at) : at)),
    }),
    without: (boundary, parts) => withoutVertices(boundary, 'path', parts, 2),
  },
};

export const boundaryDocs: KindDocs<typeof boundarySchema> = {
  says: 'Property lines, right-of-way and easement lines, and the middles of streets.',
  fields: {
    path: 'Its corners from end to end; the last is the first again where it closes.',
  },
  examples: [
    {
      id: 'BL1',
      path: [
        [-40, -30],
        [60, -30],
        [60, 60],
      ],
      kind: 'right-of-way',
      name: 'Alder Street',
      setback: 5,
    },
  ],
};
