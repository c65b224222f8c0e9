import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import type { Keepout } from '../../../routing/site/site.ts';
import { drawKeepouts } from '../pictures/ground.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface KeepoutMark extends ElementMark<'keepouts'> {
  readonly area: Keepout;
}

export const keepouts: BoardKind<'keepouts', KeepoutMark> = {
  mark: kept((area: Keepout): KeepoutMark => ({ list: 'keepouts', id: area.id, area, ...boxOf(area.outline) })),
  pictures: [{ name: 'keepouts', over: 80, draw: drawKeepouts }],
  hold: { rank: 80, tour: 80, wide: true, ground: true },
  aims: ({ id, area }, { end }) => {
    for (const corner of area.outline) end(corner, `corner of ${id}`);
  },
};
