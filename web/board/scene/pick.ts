import { type Box, boxHolds, boxOf } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { boardKind, heldBy, MARKED_LISTS, type MarkedList } from '../kinds/kinds.ts';
import { refOf, type SceneMark } from './mark.ts';
import { pointInOutline, toSegment } from './near.ts';
import { marksOf, type Scene } from './scene.ts';

/** What the hand can take hold of, the topmost and smallest first. Runs are chosen through their drops. */
const ORDER = heldBy('rank');

/** Lists that the hand passes over: hidden or locked. */
export type Passing = ReadonlySet<string>;
const NOTHING: Passing = new Set();

/**
 * The element under a point, or null. `near` is how far off, feet, the hand may be.
 */
export function pickAt(scene: Scene, at: Point2, near: number, passing: Passing = NOTHING): Ref | null {
  const box = { minX: at[0] - near, minY: at[1] - near, maxX: at[0] + near, maxY: at[1] + near };
  for (const list of ORDER) {
    if (passing.has(list)) continue;
    const index = marksOf(scene, list);
    const reach = near * (boardKind(list).hold?.reach ?? 1);
    let best: SceneMark | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const i of positionsIn(index, box)) {
      const off = distanceTo(scene, list, i, at);
      if (off < least && off <= reach) {
        best = index.items[i]!;
        least = off;
      }
    }
    if (best) return refOf(best);
  }
  return null;
}

/** The elements that lie wholly in a box; of areas and beams only where they are all that lies there. */
export const pickIn = (scene: Scene, box: Box, passing: Passing = NOTHING): Ref[] =>
  inside(scene, box, passing, (list, i) => boxHolds(box, marksOf(scene, list).items[i]!));

/** The elements that lie wholly within a path drawn round them; of areas and beams as `pickIn`. */
export const pickWithin = (scene: Scene, path: readonly Point2[], passing: Passing = NOTHING): Ref[] =>
  inside(scene, boxOf(path), passing, (list, i) => pointsAt(scene, list, i).every((at) => pointInOutline(at, path)));

function inside(scene: Scene, box: Box, passing: Passing, holds: (list: MarkedList, i: number) => boolean): Ref[] {
  const of = (wide: boolean): Ref[] =>
    MARKED_LISTS.filter((list) => {
      const { hold } = boardKind(list);
      return hold && (hold.wide ?? false) === wide && !passing.has(list);
    }).flatMap((list) => {
      const index = marksOf(scene, list);
      return positionsIn(index, box)
        .filter((i) => holds(list, i))
        .flatMap((i) => refOf(index.items[i]!) ?? []);
    });
  const usual = of(false);
  return usual.length > 0 ? usual : of(true);
}

/** The places that make up what is drawn of an element; marks of what the hand takes stand where their elements do. */
const pointsAt = (scene: Scene, list: MarkedList, i: number): readonly Point2[] =>
  placedKind(list)?.points(scene.site[list][i] as never) ?? [];

/** How far an element is from a place, feet: of an outline nothing inside it, and past all reach outside. */
function distanceTo(scene: Scene, list: MarkedList, i: number, at: Point2): number {
  const own = boardKind(list).hold?.distance;
  if (own) return own(marksOf(scene, list).items[i] as never, at);
  const points = pointsAt(scene, list, i);
  const shape = placedKind(list)?.shape;
  if (shape === 'ring') return pointInOutline(at, points) ? 0 : Number.POSITIVE_INFINITY;
  if (shape === 'line') return alongPath(points, at);
  return Math.min(...points.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
}

function alongPath(path: readonly Point2[], at: Point2): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) least = Math.min(least, toSegment(at, path[i - 1]!, path[i]!));
  return least;
}
