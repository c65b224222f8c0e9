import { direction } from '../../../../routing/plane/direction.ts';
import { tidy } from '../../../../routing/site/file/tidy.ts';
import { placedKind } from '../../../../routing/site/kinds/kinds.ts';
import { type Motion, wholeTurn } from '../../../../routing/site/place/motion.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { Element, ListName } from '../../change/element-lists.ts';

export const shift = (dx: number, dy: number, dz = 0): Motion => ({
  point: ([x, y]) => [tidy(x + dx), tidy(y + dy)],
  direction: (degrees) => degrees,
  lift: dz,
  mirrors: false,
});

/** Turned counter-clockwise about a point. */
export function turn(about: Point2, degrees: number): Motion {
  const [cos, sin] = direction(degrees);
  return {
    point: ([x, y]) => {
      const dx = x - about[0];
      const dy = y - about[1];
      return [tidy(about[0] + dx * cos - dy * sin), tidy(about[1] + dx * sin + dy * cos)];
    },
    direction: (was) => wholeTurn(was + degrees),
    lift: 0,
    mirrors: false,
  };
}

/** Mirrored in the line through a point in a direction. */
export function mirrored(through: Point2, degrees: number): Motion {
  const [cos, sin] = direction(2 * degrees);
  return {
    point: ([x, y]) => {
      const dx = x - through[0];
      const dy = y - through[1];
      return [tidy(through[0] + dx * cos + dy * sin), tidy(through[1] + dx * sin - dy * cos)];
    },
    direction: (was) => wholeTurn(2 * degrees - was),
    lift: 0,
    mirrors: true,
  };
}

/** An element, in the file's units, after a motion; one without a place of its own as it was. */
export function moved(list: ListName, element: Element, motion: Motion): Element {
  return placedKind(list)?.moved(element as never, motion) ?? element;
}
