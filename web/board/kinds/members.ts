import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Member } from '../../../routing/site/site.ts';
import { drawMembers } from '../pictures/ground.ts';
import { drawMemberEnds } from '../pictures/steel/member-ends.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface MemberMark extends ElementMark<'members'> {
  readonly member: Member;
}

export const members: BoardKind<'members', MemberMark> = {
  called: 'beams, purlins and canopies',
  mark: kept(
    (member: Member): MemberMark => ({
      list: 'members',
      id: member.id,
      member,
      ...boxOf([inPlan(member.from), inPlan(member.to)]),
    }),
  ),
  pictures: [
    { name: 'members', over: 90, from: 2, draw: drawMembers },
    { name: 'member ends', over: 230, on: 'live', draw: drawMemberEnds },
  ],
  // Beams are taken only where the hand is right on them: they lie over everything and are moved seldom.
  hold: { rank: 60, tour: 70, reach: 1 / 3, wide: true, ground: true },
  aims: ({ member }, { path }) => path([member.from, member.to]),
};
