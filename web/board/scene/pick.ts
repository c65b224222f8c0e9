import { type Box, boxHolds, boxOf } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';
import type { Mark } from './mark.ts';
import { pointInOutline, toSegment } from './near.ts';
import { marksOf, type Scene, type SceneList } from './scene.ts';

/** What the hand can take hold of, the topmost and smallest first. Runs are chosen through their drops. */
const ORDER = [
  'drops',
  'pullpoints',
  'columns',
  'equipment',
  'raceways',
  'members',
  'stalls',
  'keepouts',
  'aisles',
] as const satisfies readonly SceneList[];

/** Lists that the hand passes over: hidden or locked. */
export type Passing = ReadonlySet<string>;
const NOTHING: Passing = new Set();

/** The element of a mark; null for what is only a picture of others. */
export function refOf(mark: Mark): Ref | null {
  switch (mark.kind) {
    case 'stall':
      return { list: 'stalls', id: mark.stall.id };
    case 'column':
      return { list: 'columns', id: mark.column.id };
    case 'member':
      return { list: 'members', id: mark.member.id };
    case 'keepout':
      return { list: 'keepouts', id: mark.area.id };
    case 'aisle':
      return { list: 'aisles', id: mark.area.id };
    case 'equipment':
      return { list: 'equipment', id: mark.equipment.id };
    case 'feeder':
      return { list: 'feeders', id: mark.id };
    case 'raceway':
      return { list: 'raceways', id: mark.raceway.id };
    case 'pullpoint':
      return { list: 'pullpoints', id: mark.pullpoint.id };
    case 'drop':
      return { list: 'drops', id: mark.drop.id };
    case 'run':
      return null;
  }
}

/**
 * The element under a point, or null. `near` is how far off, feet, the hand may be. Beams are taken only where the
 * hand is right on them and nothing else is there: they lie over everything and are moved seldom.
 */
export function pickAt(scene: Scene, at: Point2, near: number, passing: Passing = NOTHING): Ref | null {
  const box = { minX: at[0] - near, minY: at[1] - near, maxX: at[0] + near, maxY: at[1] + near };
  for (const list of ORDER) {
    if (passing.has(list)) continue;
    const index = marksOf(scene, list);
    let best: Mark | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const i of positionsIn(index, box)) {
      const off = distanceTo(index.items[i]!, at);
      if (off < least && off <= (list === 'members' ? near / 3 : near)) {
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
  inside(scene, box, passing, (mark) => boxHolds(box, mark));

/** The elements that lie wholly within a path drawn round them; of areas and beams as `pickIn`. */
export const pickWithin = (scene: Scene, path: readonly Point2[], passing: Passing = NOTHING): Ref[] =>
  inside(scene, boxOf(path), passing, (mark) => pointsOf(mark).every((at) => pointInOutline(at, path)));

function inside(scene: Scene, box: Box, passing: Passing, holds: (mark: Mark) => boolean): Ref[] {
  const of = (lists: readonly (typeof ORDER)[number][]): Ref[] =>
    lists
      .filter((list) => !passing.has(list))
      .flatMap((list) => {
        const index = marksOf(scene, list);
        return positionsIn(index, box)
          .map((i) => index.items[i]!)
          .filter(holds)
          .flatMap((mark) => refOf(mark) ?? []);
      });
  const usual = of(['stalls', 'columns', 'equipment', 'raceways', 'pullpoints', 'drops']);
  return usual.length > 0 ? usual : of(['members', 'keepouts', 'aisles']);
}

/** The places that make up what is drawn of an element. */
function pointsOf(mark: Mark): readonly Point2[] {
  switch (mark.kind) {
    case 'stall':
    case 'column':
    case 'equipment':
      return mark.corners;
    case 'member':
      return [inPlan(mark.member.from), inPlan(mark.member.to)];
    case 'keepout':
    case 'aisle':
      return mark.area.outline;
    case 'feeder':
      return [mark.from, mark.to];
    case 'raceway':
      return mark.raceway.path.map(inPlan);
    case 'pullpoint':
      return [inPlan(mark.pullpoint.at)];
    case 'drop':
      return [inPlan(mark.drop.box), inPlan(mark.drop.retractor ?? mark.drop.box)];
    case 'run':
      return mark.path.map(inPlan);
  }
}

function distanceTo(mark: Mark, at: Point2): number {
  switch (mark.kind) {
    case 'drop': {
      const { box, retractor } = mark.drop;
      const toBox = Math.hypot(box[0] - at[0], box[1] - at[1]);
      return retractor ? Math.min(toBox, Math.hypot(retractor[0] - at[0], retractor[1] - at[1])) : toBox;
    }
    case 'pullpoint':
      return Math.hypot(mark.pullpoint.at[0] - at[0], mark.pullpoint.at[1] - at[1]);
    case 'raceway':
      return alongPath(mark.raceway.path, at);
    case 'member':
      return alongPath([mark.member.from, mark.member.to], at);
    case 'feeder':
      return toSegment(at, mark.from, mark.to);
    case 'run':
      return alongPath(mark.path, at);
    case 'stall':
    case 'column':
    case 'equipment':
      return pointInOutline(at, mark.corners) ? 0 : Number.POSITIVE_INFINITY;
    case 'keepout':
    case 'aisle':
      return pointInOutline(at, mark.area.outline) ? 0 : Number.POSITIVE_INFINITY;
  }
}

function alongPath(path: readonly (readonly [number, number, number])[], at: Point2): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    least = Math.min(least, toSegment(at, [a[0], a[1]], [b[0], b[1]]));
  }
  return least;
}
