import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { drawDrops, drawDropWords } from '../pictures/stalls/drops.ts';
import { HANDLE_BESIDE } from './beside.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface DropMark extends ElementMark<'drops'> {
  readonly drop: Drop;
}

export const drops: BoardKind<'drops', DropMark> = {
  mark: kept(
    (drop: Drop): DropMark => ({
      list: 'drops',
      id: drop.id,
      drop,
      ...boxOf([inPlan(drop.box), inPlan(drop.retractor ?? drop.box)]),
    }),
  ),
  keptClear: true,
  pictures: [
    { name: 'drops', over: 190, from: 0.7, draw: drawDrops },
    { name: 'drop words', over: 220, from: 1.6, draw: drawDropWords },
  ],
  hold: { rank: 10, tour: 10, rides: true, named: true },
  aims: ({ id, drop }, { end }) => end(drop.box, `box of ${id}`),
  handle: ({ kind }, all, scale) => {
    const shape = kind === 'box' ? 'square' : 'round';
    const [box, retractor] = all;
    const near =
      box && retractor && Math.hypot(box.at[0] - retractor.at[0], box.at[1] - retractor.at[1]) * scale < HANDLE_BESIDE;
    return { shape, aside: near ? [kind === 'box' ? -HANDLE_BESIDE : HANDLE_BESIDE, HANDLE_BESIDE] : [0, 0] };
  },
};
