import * as v from 'valibot';
import { inPlan } from '../../plane/space.ts';
import { inSpace } from '../place/motion.ts';
import { id, maybe, point3, told } from '../schema/schema-parts.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const memberSchema = v.strictObject({
  id,
  from: point3,
  to: point3,
  stringer: maybe(
    told(v.boolean(), 'A strut that is put in from steel to steel for what hangs from it: it is bought and counted.'),
  ),
});

export type Member = Of<typeof memberSchema>;

export const members: PlacedKind<typeof memberSchema> = {
  schema: memberSchema,
  one: 'member',
  many: 'members',
  anyOne: 'a member',
  moved: (member, motion) => ({ ...member, from: inSpace(member.from, motion), to: inSpace(member.to, motion) }),
  points: ({ from, to }) => [inPlan(from), inPlan(to)],
  shape: 'line',
};

export const memberDocs: KindDocs<typeof memberSchema> = {
  says: 'Beams and purlins that carry raceways and retractors.',
  fields: {
    from: 'One end, on the line that things hang from.',
    to: 'The other end.',
  },
  examples: [{ id: 'B1', from: [-10, 0, 11], to: [30, 0, 11.5], stringer: true }],
};
