import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Pullpoint } from '../../../routing/site/site.ts';
import { drawPullpoints } from '../pictures/ways/raceways.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface PullpointMark extends ElementMark<'pullpoints'> {
  readonly pullpoint: Pullpoint;
}

export const pullpoints: BoardKind<'pullpoints', PullpointMark> = {
  mark: kept(
    (pullpoint: Pullpoint): PullpointMark => ({
      list: 'pullpoints',
      id: pullpoint.id,
      pullpoint,
      ...boxOf([inPlan(pullpoint.at)]),
    }),
  ),
  pictures: [{ name: 'pullpoints', over: 180, from: 1, draw: drawPullpoints }],
  hold: { rank: 20, tour: 20, rides: true },
  aims: ({ id, pullpoint }, { end }) => end(pullpoint.at, id),
};
