import { length3 } from '../plane/distance.ts';
import type { Drop, Point3, Rules } from '../site/site.ts';
import type { CordStart } from './stall-reach.ts';

const apart = (a: Point3, b: Point3): number => length3(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Where a drop's cord hangs from, and what of it is left there: the cord less the way from the box and the slack. */
export function cordStart(drop: Pick<Drop, 'box' | 'retractor' | 'cord'>, rules: Pick<Rules, 'cordSlack'>): CordStart {
  const from = drop.retractor ?? drop.box;
  return { from, available: drop.cord - apart(drop.box, from) - rules.cordSlack };
}
