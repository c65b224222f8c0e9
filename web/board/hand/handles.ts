import type { Part } from '../../../routing/site/kinds/kind.ts';
import type { Point2, Point3, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';
import { findDrop, findEquipment, findRaceway } from '../../document/find-in-site.ts';
import { type Camera, type ScreenPoint, toScreen, type Viewport } from '../camera.ts';

/** A handle of the selected element, with where it is drawn: aside, with a leader, where two would lie on one spot. */
export interface Handle {
  readonly ref: Ref;
  readonly at: Point3;
  readonly aside: readonly [dx: number, dy: number];
  readonly shape: 'square' | 'round';
}

const BESIDE = 22;

/** The handles of what is selected; only a single element shows them. */
export function handlesOf(site: Site, selection: readonly Ref[], scale: number): readonly Handle[] {
  const [first] = selection;
  if (!first || selection.some(({ list, id }) => list !== first.list || id !== first.id)) return [];
  const handle = (part: Part, at: Point3, shape: Handle['shape'], aside: Handle['aside'] = [0, 0]): Handle => ({
    ref: { list: first.list, id: first.id, part },
    at,
    aside,
    shape,
  });
  if (first.list === 'raceways') {
    const raceway = findRaceway(site.raceways, first.id);
    return (
      raceway?.path.map((at, index) =>
        handle({ kind: 'vertex', index }, at, 'square', riser(raceway.path, index, scale)),
      ) ?? []
    );
  }
  if (first.list === 'drops') {
    const drop = findDrop(site.drops, first.id);
    if (!drop?.retractor) return drop ? [handle({ kind: 'box' }, drop.box, 'square')] : [];
    const apart = Math.hypot(drop.box[0] - drop.retractor[0], drop.box[1] - drop.retractor[1]) * scale;
    const beside = apart < BESIDE;
    return [
      handle({ kind: 'box' }, drop.box, 'square', beside ? [-BESIDE, BESIDE] : [0, 0]),
      handle({ kind: 'retractor' }, drop.retractor, 'round', beside ? [BESIDE, BESIDE] : [0, 0]),
    ];
  }
  if (first.list === 'equipment') {
    const equipment = findEquipment(site.equipment, first.id);
    return equipment ? [handle({ kind: 'entry' }, equipment.entry, 'round', [BESIDE, BESIDE])] : [];
  }
  return [];
}

/** A vertex straight above another is drawn beside it, or the lower of the two could not be taken hold of. */
function riser(path: readonly Point3[], index: number, scale: number): readonly [number, number] {
  const at = path[index]!;
  const above = path
    .slice(0, index)
    .filter((other) => Math.hypot(other[0] - at[0], other[1] - at[1]) * scale < 8).length;
  return [above * BESIDE * 0.8, above * BESIDE * 0.8];
}

/** Where a handle is drawn on the screen. */
export function handleOnScreen({ at, aside }: Handle, camera: Camera, view: Viewport): ScreenPoint {
  const { px, py } = toScreen(camera, view, [at[0], at[1]] satisfies Point2);
  return { px: px + aside[0], py: py + aside[1] };
}
