import * as v from 'valibot';
import { id, outline, told } from '../schema/schema-parts.ts';
import { flat, type Of, type PlacedKind, withoutVertices } from './kind.ts';

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
