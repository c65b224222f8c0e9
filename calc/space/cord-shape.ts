import { catenary, riseAt } from '../../routing/reach/cords/catenary.ts';
import { cordStart } from '../../routing/reach/cords/cord-start.ts';
import { lengthAlong, pointAlong } from '../../routing/reach/cords/plan-path.ts';
import { restOf } from '../../routing/reach/cords/pull.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Drop, Point2, Point3, Rules } from '../../routing/site/site.ts';

/** Straights that a curve is drawn in. */
const STEPS = 16;

type CordDrop = Pick<Drop, 'box' | 'retractor' | 'cord' | 'mount' | 'restHeight'>;

/**
 * The cord of a drop as it hangs to the inlet of its worst case, with all of it out: the catenary over its plan path,
 * flat on the ground where the curve would go below it; of a pedestal down to its foot, along the ground and up. Feet, in
 * straights; empty where it does not arrive.
 */
export function cordOut(drop: CordDrop, rules: Pick<Rules, 'cordSlack'>, { worst }: Reach): readonly Point3[] {
  const { path, inletAt, hang } = worst;
  if (hang === null || path.length === 0) return [];
  const { from, available, onGround } = cordStart(drop, rules);
  if (onGround) return [from, ...path.map(([x, y]): Point3 => [x, y, 0]), inletAt];
  const span = lengthAlong(path);
  const curve = catenary(available, span, from[2] - inletAt[2]);
  if (curve === null) {
    if (span > 1e-9) return path.map((at) => lifted(at, from[2] + ((inletAt[2] - from[2]) * alongTo(path, at)) / span));
    const low = Math.max(0, (from[2] + inletAt[2] - available) / 2);
    return [from, [from[0], from[1], low], inletAt];
  }
  const bottom = from[2] - riseAt(curve, 0);
  return distancesAlong(path, span).map((d) => lifted(pointAlong(path, d), Math.max(0, bottom + riseAt(curve, d))));
}

const lifted = ([x, y]: Point2, z: number): Point3 => [x, y, z];

const alongTo = (path: readonly Point2[], at: Point2): number => lengthAlong(path.slice(0, path.indexOf(at) + 1));

/** Even distances along a path and those of its corners, from its start to its end. */
function distancesAlong(path: readonly Point2[], span: number): readonly number[] {
  const all = Array.from({ length: STEPS + 1 }, (_, i) => (span * i) / STEPS);
  for (let i = 1; i < path.length - 1; i++) all.push(lengthAlong(path.slice(0, i + 1)));
  return [...new Set(all)].sort((a, b) => a - b);
}

/**
 * The cord of an overhead drop at rest: straight down to the height of its stowed connector, else as far as it goes, feet;
 * null of one that hangs on its pedestal or wall.
 */
export function cordAtRest(drop: CordDrop, rules: Pick<Rules, 'cordSlack'>): readonly [Point3, Point3] | null {
  if ((drop.mount ?? 'overhead') !== 'overhead') return null;
  const { from, available } = cordStart(drop, rules);
  const { restHeight } = drop;
  const low =
    restHeight !== undefined && restHeight < from[2] ? restHeight : restOf(from, available, undefined, 0, 0).free;
  return low < from[2] ? [from, [from[0], from[1], low]] : null;
}
