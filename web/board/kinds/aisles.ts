import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import type { Aisle } from '../../../routing/site/site.ts';
import { drawAisles } from '../pictures/ground.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface AisleMark extends ElementMark<'aisles'> {
  readonly area: Aisle;
}

export const aisles: BoardKind<'aisles', AisleMark> = {
  mark: kept((area: Aisle): AisleMark => ({ list: 'aisles', id: area.id, area, ...boxOf(area.outline) })),
  // Aisles may reach far: they are drawn, but the lot is what one looks at.
  extent: () => false,
  ground: true,
  pictures: [{ name: 'aisles', over: 10, draw: drawAisles }],
  hold: { rank: 90, tour: 90, wide: true, ground: true },
  aims: ({ id, area }, { end }) => {
    for (const corner of area.outline) end(corner, `corner of ${id}`);
  },
};
