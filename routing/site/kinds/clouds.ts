import * as v from 'valibot';
import { id, outline, told } from '../schema/schema-parts.ts';
import { flat, type KindDocs, type Of, type PlacedKind, withoutVertices } from './kind.ts';

/** Letters that a delta has room for. */
export const MOST_MARK = 12;

export const cloudSchema = v.strictObject({
  id,
  outline,
  mark: told(
    v.pipe(v.string(), v.maxLength(MOST_MARK)),
    'The revision that it belongs to, as its delta shows it; no delta where empty.',
  ),
});

export type Cloud = Of<typeof cloudSchema>;

export const clouds: PlacedKind<typeof cloudSchema> = {
  schema: cloudSchema,
  one: 'cloud',
  many: 'clouds',
  anyOne: 'a cloud',
  alsoCalled: ({ mark }) => mark,
  moved: (cloud, { point }) => ({ ...cloud, outline: cloud.outline.map(point) }),
  points: ({ outline: corners }) => corners,
  shape: 'ring',
  remark: true,
  unclouded: true,
  parts: {
    of: ({ outline: corners }) => corners.map((at, index) => ({ part: { kind: 'corner', index }, at })),
    moved: (cloud, part, to) => ({
      ...cloud,
      outline: cloud.outline.map((at, index) => (index === part.index ? flat(to, at) : at)),
    }),
    without: (cloud, parts) => withoutVertices(cloud, 'outline', parts, 3),
  },
};

export const cloudDocs: KindDocs<typeof cloudSchema> = {
  says: 'Revision clouds that somebody drew.',
  fields: {
    outline: 'Its corners in order.',
  },
  examples: [
    {
      id: 'CL1',
      outline: [
        [-2, -2],
        [12, -2],
        [12, 20.5],
        [-2, 20.5],
      ],
      mark: 'A',
    },
  ],
};
