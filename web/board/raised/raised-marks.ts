import { raisedAt } from '../../../calc/space/oblique.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { DropMark } from '../kinds/drops.ts';
import type { EquipmentMark } from '../kinds/equipment.ts';
import type { MemberMark } from '../kinds/members.ts';
import type { PullpointMark } from '../kinds/pullpoints.ts';
import type { RacewayMark } from '../kinds/raceways.ts';
import type { RunMark } from '../scene/mark.ts';

/** A place in space where the drawing shows it, with its elevation for the words that tell it. */
const shown = (at: Point3): Point3 => [...raisedAt(at), at[2]];
const dropUp = kept(({ drop, ...mark }: DropMark): DropMark => {
  const box = shown(drop.box);
  const retractor = drop.retractor && shown(drop.retractor);
  return {
    ...mark,
    drop: { ...drop, box, ...(retractor && { retractor }) },
    ...boxOf([inPlan(box), inPlan(retractor ?? box)]),
  };
});

const racewayUp = kept(({ raceway, ...mark }: RacewayMark): RacewayMark => {
  const path = raceway.path.map(shown);
  return { ...mark, raceway: { ...raceway, path }, ...boxOf(path.map(inPlan)) };
});

const memberUp = kept(({ member, ...mark }: MemberMark): MemberMark => {
  const [from, to] = [shown(member.from), shown(member.to)];
  return { ...mark, member: { ...member, from, to }, ...boxOf([inPlan(from), inPlan(to)]) };
});

const pullpointUp = kept(({ pullpoint, ...mark }: PullpointMark): PullpointMark => {
  const at = shown(pullpoint.at);
  return { ...mark, pullpoint: { ...pullpoint, at }, ...boxOf([inPlan(at)]) };
});

/** The outline of a cabinet is raised to its top; its working space lies on the ground. */
const equipmentUp = kept(({ equipment, corners, ...mark }: EquipmentMark): EquipmentMark => {
  const up = ([x, y]: Point2): Point2 => raisedAt([x, y, equipment.size[2]]);
  const [a, b, c, d] = corners;
  const top = [up(a), up(b), up(c), up(d)] as const;
  return { ...mark, equipment: { ...equipment, at: up(equipment.at) }, corners: top, space: null, ...boxOf(top) };
});

const runUp = kept((mark: RunMark): RunMark => {
  const path = mark.path.map(shown);
  return { ...mark, path, ...boxOf(path.map(inPlan)) };
});

interface RaisedLists {
  readonly drops: DropMark;
  readonly raceways: RacewayMark;
  readonly members: MemberMark;
  readonly pullpoints: PullpointMark;
  readonly equipment: EquipmentMark;
  readonly runs: RunMark;
}
export type RaisedList = keyof RaisedLists;

const UP: { readonly [L in RaisedList]: (mark: RaisedLists[L]) => RaisedLists[L] } = {
  drops: dropUp,
  raceways: racewayUp,
  members: memberUp,
  pullpoints: pullpointUp,
  equipment: equipmentUp,
  runs: runUp,
};

/** A mark where it is in space; the same object for as long as the mark stays. */
export const raisedMark = <L extends RaisedList>(list: L, mark: RaisedLists[L]): RaisedLists[L] =>
  (UP[list] as (mark: RaisedLists[L]) => RaisedLists[L])(mark);
