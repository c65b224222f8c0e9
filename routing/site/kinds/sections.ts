import * as v from 'valibot';
import type { Point2 } from '../../plane/point.ts';
import { filledText, id, length, point2, told } from '../schema/schema-parts.ts';
import { flat, type KindDocs, type Of, type PlacedKind } from './kind.ts';

/** Letters that the title of a section has room for. */
export const MOST_SECTION_NAME = 80;

export const sectionSchema = v.strictObject({
  id,
  name: told(v.pipe(filledText, v.maxLength(MOST_SECTION_NAME)), 'Title of the drawing of what is cut.'),
  from: point2,
  to: point2,
  look: told(
    length,
    'How far one looks past the cut, to the left of the way from `from` to `to`; to the right where negative.',
  ),
});

export type CutSection = Of<typeof sectionSchema>;

export const sections: PlacedKind<typeof sectionSchema> = {
  schema: sectionSchema,
  one: 'section',
  many: 'sections',
  anyOne: 'a section',
  alsoCalled: ({ name }) => name,
  moved: (section, { point, mirrors }) => ({
    ...section,
    from: point(section.from),
    to: point(section.to),
    look: mirrors && section.look !== 0 ? -section.look : section.look,
  }),
  points: ({ from, to }) => [from, to],
  shape: 'line',
  remark: true,
  unclouded: true,
  parts: {
    of: ({ from, to }) => [
      { part: { kind: 'start' }, at: from },
      { part: { kind: 'end' }, at: to },
    ],
    moved: (section, { kind }, to) =>
      kind === 'start' ? { ...section, from: flat(to, section.from) } : { ...section, to: flat(to, section.to) },
    without: () => null,
  },
};

export const sectionDocs: KindDocs<typeof sectionSchema> = {
  says: 'Where sections are cut.',
  fields: {
    from: 'One end of the cut.',
    to: 'The other end.',
  },
  examples: [{ id: 'SEC1', name: 'At the drops', from: [4.5, -6], to: [4.5, 44.5], look: 10.5 }],
};

/** How far the heads at the ends of a cut reach, feet. */
const HEAD = 1.6;

/** The heads at the ends of a cut, that point the way one looks; none where its ends are one place. */
export function lookHeads({
  from,
  to,
  look,
}: Pick<CutSection, 'from' | 'to' | 'look'>): readonly (readonly Point2[])[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long === 0) return [];
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const side = look < 0 ? -1 : 1;
  return [from, to].map(([x, y]) => [
    [x - (ux * HEAD) / 2, y - (uy * HEAD) / 2],
    [x + (ux * HEAD) / 2, y + (uy * HEAD) / 2],
    [x - uy * side * HEAD, y + ux * side * HEAD],
  ]);
}

/** So much of a cut is drawn at its ends, feet: a line all the way would hide what it goes through. */
const CUT_END = 4;

/** The ends of a cut as lines; a third of it each where it is short. */
export function cutEnds({ from, to }: Pick<CutSection, 'from' | 'to'>): readonly (readonly Point2[])[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const share = long === 0 ? 0 : Math.min(CUT_END / long, 1 / 3);
  const [u, v] = [(to[0] - from[0]) * share, (to[1] - from[1]) * share];
  return [
    [from, [from[0] + u, from[1] + v]],
    [[to[0] - u, to[1] - v], to],
  ];
}
