import * as v from 'valibot';
import { inPlan } from '../../plane/space.ts';
import { inSpace } from '../place/motion.ts';
import { id, maybe, nonNegativeLength, point3, positiveLength, told, wholePositive } from '../schema/schema-parts.ts';
import { MOUNTS } from '../schema/vocabulary.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const dropSchema = v.strictObject({
  id,
  box: told(point3, 'Junction box, where the branch ends and the cord begins.'),
  retractor: maybe(told(point3, 'Point the cord hangs from.')),
  cord: told(positiveLength, 'Usable length of the cord.'),
  mount: maybe(told(v.picklist(MOUNTS), '`overhead` where absent.')),
  restHeight: maybe(told(nonNegativeLength, 'Height of the stowed connector.')),
  holds: maybe(told(wholePositive, 'Cords the drop is made for.')),
});

export type Drop = Of<typeof dropSchema>;

export const drops: PlacedKind<typeof dropSchema> = {
  schema: dropSchema,
  one: 'drop',
  many: 'drops',
  anyOne: 'a drop',
  moved: (drop, motion) => ({
    ...drop,
    box: inSpace(drop.box, motion),
    ...(drop.retractor && { retractor: inSpace(drop.retractor, motion) }),
  }),
  points: ({ box, retractor }) => (retractor ? [inPlan(box), inPlan(retractor)] : [inPlan(box)]),
  shape: 'point',
  parts: {
    of: ({ box, retractor }) => [
      { part: { kind: 'box' }, at: box },
      ...(retractor ? [{ part: { kind: 'retractor' }, at: retractor }] : []),
    ],
    moved: (drop, { kind }, to) =>
      kind === 'box'
        ? { ...drop, box: to(drop.box) }
        : { ...drop, ...(drop.retractor && { retractor: to(drop.retractor) }) },
    without: ({ retractor, ...drop }, parts) => (parts.some(({ kind }) => kind === 'box') ? null : drop),
  },
};

export const dropDocs: KindDocs<typeof dropSchema> = {
  says: 'Boxes from which cords come, with the retractors that hold them.',
  examples: [
    { id: 'D01', box: [0, 0, 10], retractor: [0, 4, 10], cord: 25, mount: 'overhead', restHeight: 3.5, holds: 2 },
    { id: 'D02', box: [9, 0, 10], cord: 24 },
  ],
};
