import { hypot2 } from '../../routing/plane/hypot.ts';
import { distance, LENGTH_SLACK } from '../../routing/plane/space.ts';
import type { Member, Point3 } from '../../routing/site/site.ts';
import type { Hung } from '../plan-file.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { alongMember } from './loads.ts';
import { type SpanStatics, simpleSpan } from './simple-span.ts';

/**
 * Reactions and largest moment of a member under what hangs on it, as if it rested on its two ends alone. One that stands
 * upright spans nothing: all of it rests on its foot.
 */
export function memberStatics(member: Member, { pounds, points, runs }: Hung, tell: Tell = SILENT): SpanStatics {
  const { from, to } = member;
  const length = distance(from, to);
  const inPlan = hypot2(to[0] - from[0], to[1] - from[1]);
  if (inPlan <= LENGTH_SLACK) return { reactions: from[2] <= to[2] ? [pounds, 0] : [0, pounds], moment: 0, at: 0 };
  const within = (at: Point3): number => Math.min(length, alongMember(member, at));
  return simpleSpan(
    { length, inPlan },
    [
      ...points.map(({ at, pounds: own }) => ({ at: within(at), pounds: own })),
      ...runs.map((run) => ({ from: within(run.from), to: within(run.to), poundsPerFoot: run.poundsPerFoot })),
    ],
    tell,
  );
}
