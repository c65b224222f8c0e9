import { direction } from '../../../routing/plane/direction.ts';
import type { DrawnItem, Extent } from './drawing.ts';
import { extentOf } from './extent.ts';

/** Width of a sign as a share of the height of capitals, so that no lettering leaves its frame. */
const SIGN = 0.82;
const BACK = { left: 0, middle: 0.5, right: 1 } as const;

/** The box round a drawing, its words as wide as they are and on the side that they stand on. */
export function sectionExtent(items: readonly DrawnItem[]): Extent {
  const lines = items.map((item): DrawnItem => {
    if (item.kind !== 'text') return item;
    const { at, text, height, turn, anchor, layer } = item;
    const width = text.length * height * SIGN;
    const [ux, uy] = direction(turn);
    const [from, to] = [-width * BACK[anchor], width * (1 - BACK[anchor])];
    const corner = (along: number, up: number) => [at[0] + along * ux - up * uy, at[1] + along * uy + up * ux] as const;
    return {
      kind: 'line',
      layer,
      closed: true,
      points: [corner(from, -0.3 * height), corner(to, -0.3 * height), corner(to, height), corner(from, height)],
    };
  });
  return extentOf(lines) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
}
