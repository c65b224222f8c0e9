import { type Box, widened } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';
import type { Mark } from '../scene/mark.ts';
import { refOf } from '../scene/pick.ts';
import { marksOf, SCENE_LISTS, type Scene } from '../scene/scene.ts';

/** A place of an element that the hand is drawn to. `z` where the element says how high it is there. */
export interface TargetPoint {
  readonly kind: 'ends' | 'middles';
  readonly at: Point2;
  readonly z: number | null;
  readonly label: string;
  readonly ref: Ref;
}

/** A straight part of a raceway or a member. */
export interface TargetLine {
  readonly from: Point3;
  readonly to: Point3;
  readonly label: string;
  readonly ref: Ref;
}

export interface Targets {
  readonly points: readonly TargetPoint[];
  readonly lines: readonly TargetLine[];
}

/** Of a crowd, as when a large lot is seen from far, no more than this many marks are looked at. */
const MOST = 300;

/** What of a scene in a box the hand can be drawn to; nothing of the elements that it moves, nor of kinds unseen. */
export function targetsIn(scene: Scene, box: Box, moving: readonly Ref[], unseen: ReadonlySet<string>): Targets {
  const held = new Set(moving.map(({ id }) => id));
  const points: TargetPoint[] = [];
  const lines: TargetLine[] = [];
  let left = MOST;
  for (const list of SCENE_LISTS) {
    if (list === 'runs' || list === 'feeders' || unseen.has(list)) continue;
    const index = marksOf(scene, list);
    for (const i of positionsIn(index, box)) {
      const mark = index.items[i]!;
      const ref = refOf(mark);
      if (!ref || held.has(ref.id)) continue;
      if (left-- <= 0) return { points, lines };
      addTargets(mark, ref, points, lines);
    }
  }
  return { points, lines };
}

/** The same about a point, within a distance of it. */
export const targetsAt = (
  scene: Scene,
  at: Point2,
  within: number,
  moving: readonly Ref[],
  unseen: ReadonlySet<string>,
): Targets => targetsIn(scene, widened({ minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] }, within), moving, unseen);

function addTargets(mark: Mark, ref: Ref, points: TargetPoint[], lines: TargetLine[]): void {
  const { id } = ref;
  const end = (at: readonly number[], label: string): void => {
    points.push({ kind: 'ends', at: [at[0]!, at[1]!], z: at[2] ?? null, label, ref });
  };
  const middle = (a: readonly number[], b: readonly number[], label: string): void => {
    points.push({
      kind: 'middles',
      at: [(a[0]! + b[0]!) / 2, (a[1]! + b[1]!) / 2],
      z: a[2] === undefined ? null : (a[2] + b[2]!) / 2,
      label,
      ref,
    });
  };
  const path = (all: readonly Point3[], word: string): void => {
    for (const [i, at] of all.entries()) end(at, `${i === 0 || i === all.length - 1 ? 'end' : 'vertex'} of ${word}`);
    for (let i = 1; i < all.length; i++) {
      const from = all[i - 1]!;
      const to = all[i]!;
      if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 0.01) continue;
      lines.push({ from, to, label: word, ref });
      middle(from, to, `middle of ${word}`);
    }
  };
  switch (mark.kind) {
    case 'stall': {
      const [entryRight, headRight, headLeft, entryLeft] = mark.corners;
      for (const corner of mark.corners) end(corner, `corner of stall ${mark.label}`);
      middle(entryRight, entryLeft, `entry of stall ${mark.label}`);
      middle(headRight, headLeft, `head of stall ${mark.label}`);
      middle(entryRight, headRight, `stripe of stall ${mark.label}`);
      middle(entryLeft, headLeft, `stripe of stall ${mark.label}`);
      return;
    }
    case 'column':
      end(mark.column.at, `center of ${id}`);
      return;
    case 'member':
      path([mark.member.from, mark.member.to], id);
      return;
    case 'raceway':
      path(mark.raceway.path, id);
      return;
    case 'keepout':
    case 'aisle':
      for (const corner of mark.area.outline) end(corner, `corner of ${id}`);
      return;
    case 'equipment':
      end(mark.equipment.entry, `entry of ${id}`);
      for (const corner of mark.corners) end(corner, `corner of ${id}`);
      return;
    case 'pullpoint':
      end(mark.pullpoint.at, id);
      return;
    case 'drop':
      end(mark.drop.box, `box of ${id}`);
      return;
    case 'feeder':
    case 'run':
      return;
  }
}
