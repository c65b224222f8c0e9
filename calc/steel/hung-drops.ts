import { kept } from '../../routing/kept/kept.ts';
import { holderOf } from '../../routing/network/support/holders.ts';
import { placeOn } from '../../routing/network/support/share-out.ts';
import { steelOf } from '../../routing/network/support/steel-near.ts';
import { cordStart } from '../../routing/reach/cords/cord-start.ts';
import { pullOf, type RetractorPull } from '../../routing/reach/cords/pull.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Charger, Drop, Member, Point2, Point3, Rules } from '../../routing/site/site.ts';
import type { PlannedBox } from '../plan-file/branches.ts';
import type { Made } from '../plan-file/hung.ts';
import {
  BOX_WEIGHTS,
  CONNECTOR,
  CORD_FEET,
  CORD_WEIGHTS,
  MODULE_WEIGHTS,
  PULL_BOX_WEIGHTS,
  RETRACTOR_WEIGHTS,
} from '../tables/weights/component-weights.ts';
import { heavier } from '../tables/weights/weight-of.ts';
import { type Handed, type LoadOnMember, poundsOf } from './loads.ts';

/** What a box weighs with its cover, pounds: the smallest usual box that holds what it has to. */
export function boxPounds(box: Pick<PlannedBox, 'box' | 'volume' | 'length'> | undefined): number {
  if (box === undefined) return heavier(BOX_WEIGHTS.rows, 0);
  if (box.length !== null) return heavier(PULL_BOX_WEIGHTS.rows, box.length);
  const square = box.box === null ? null : box.box.startsWith('4-11/16') ? 42 : 0;
  return heavier(BOX_WEIGHTS.rows, square ?? Math.max(42, box.volume ?? 0) * (1 + 1e-6));
}

/** Pounds a foot of the cord of a charger, without its connector. */
export const cordFoot = (amps: number): number => (heavier(CORD_WEIGHTS.rows, amps) - CONNECTOR.high) / CORD_FEET;

/** The whole cord of a charger with its connector, pounds. */
export const cordPounds = (drop: Pick<Drop, 'cord'>, amps: number): number =>
  drop.cord * cordFoot(amps) + CONNECTOR.high;

/** The hardest pull of a cord when its connector is carried to the inlets it is meant for; null where it comes to none. */
export function hardestPull(
  drop: Drop,
  { amps }: Pick<Charger, 'amps'>,
  reach: readonly Pick<Reach, 'worst'>[],
  rules: Pick<Rules, 'cordSlack'>,
): RetractorPull | null {
  const { from, available } = cordStart(drop, rules);
  let hardest: RetractorPull | null = null;
  for (const { worst } of reach) {
    const pull = pullOf(worst.path, from[2], worst.inletAt[2], available, cordFoot(amps));
    if (pull !== null && (hardest === null || pull.pounds > hardest.pounds)) hardest = pull;
  }
  return hardest;
}

/** What hangs at the box of an overhead drop and at its retractor; without one all hangs at the box. */
function hungAt(
  drop: Drop,
  chargers: readonly Charger[],
  reach: ReadonlyMap<string, readonly Reach[]>,
  box: PlannedBox | undefined,
  rules: Rules,
): readonly { readonly at: Point3; readonly made: Made; readonly sideways?: Point2 }[] {
  let [cord, pull, x, y, module] = [0, 0, 0, 0, 0];
  for (const charger of chargers) {
    const own = cordPounds(drop, charger.amps);
    const force = hardestPull(drop, charger, reach.get(charger.id) ?? [], rules);
    cord += own;
    pull += Math.max(0, (force?.down ?? 0) - own);
    const heading = ((force?.heading ?? 0) * Math.PI) / 180;
    x += (force?.sideways ?? 0) * Math.cos(heading);
    y += (force?.sideways ?? 0) * Math.sin(heading);
    module += heavier(MODULE_WEIGHTS.rows, charger.amps);
  }
  const sideways: Point2 = [x, y];
  const boxed = { box: boxPounds(box), module };
  if (drop.retractor === undefined) return [{ at: drop.box, made: { ...boxed, cord, pull }, sideways }];
  const retractor = heavier(RETRACTOR_WEIGHTS.rows, cord);
  return [
    { at: drop.box, made: boxed },
    { at: drop.retractor, made: { retractor, cord, pull }, sideways },
  ];
}

/** What drops hang on the members `near` them. `chargers` are by drop, `reach` by charger, `boxes` in the order of the drops. */
export function dropsHanging(
  drops: readonly Drop[],
  chargers: ReadonlyMap<string, readonly Charger[]>,
  reach: ReadonlyMap<string, readonly Reach[]>,
  boxes: readonly (PlannedBox | undefined)[],
  rules: Rules,
  near: readonly Member[],
): Handed {
  const steel = steelOf(near);
  const loads: LoadOnMember[] = [];
  const loose: Handed['loose'][number][] = [];
  drops.forEach((drop, i) => {
    if ((drop.mount ?? 'overhead') !== 'overhead') return;
    for (const { at, made, sideways } of hungAt(drop, chargers.get(drop.id) ?? [], reach, boxes[i], rules)) {
      const member = holderOf(at, steel, rules.hangReach);
      if (member === null) loose.push({ of: drop.id, pounds: poundsOf(made) });
      else loads.push({ member, of: drop.id, made, place: { at: placeOn(member, at) }, ...(sideways && { sideways }) });
    }
  });
  return { loads, loose };
}

/** What boxes of conduits, other than at drops, hang on the members `near` them. */
export const boxesHanging = kept((boxes: readonly PlannedBox[], near: readonly Member[], reach: number): Handed => {
  const steel = steelOf(near);
  const loads: LoadOnMember[] = [];
  const loose: Handed['loose'][number][] = [];
  for (const box of boxes) {
    const made = { box: boxPounds(box) };
    const member = holderOf(box.at, steel, reach);
    if (member === null) loose.push({ of: box.id, pounds: made.box });
    else loads.push({ member, of: box.id, made, place: { at: placeOn(member, box.at) } });
  }
  return { loads, loose };
});
