import { MARGIN_KINDS, type MarginTable, marginsOf } from '../../../../calc/plan/margins.ts';
import { marginShare } from '../../../words/margin-scale.ts';
import type { DropMark } from '../../kinds/drops.ts';
import { namePx } from '../../painting/ink.ts';
import { chargersByDrop } from '../../scene/chargers-by-drop.ts';
import type { Scene } from '../../scene/scene.ts';
import type { BoardPen, Frame } from '../frame.ts';

/** Pixels to a foot from which every drop carries its margins: drops a compact stall apart do not touch. */
export const MARGINS_FROM = 6.5;
/** Pixels beside lettering of 12: half a bar, a bar's height, and from one bar to the next. */
const HALF = 15;
const HIGH = 3.5;
const STEP = 5;
/** Pixels from one slanting line of a failing bar to the next. */
const HATCH = 3;

/**
 * The least left of each kind over the chargers of a drop, as pixels of its bar from the center mark; NaN without a
 * figure. Written into `into` so that drawing thousands makes nothing to be swept up.
 */
function barsOf(scene: Scene, margins: MarginTable, drop: string, into: Float64Array): boolean {
  into.fill(Number.NaN);
  let any = false;
  const own = chargersByDrop(scene.site.chargers).get(drop);
  if (!own) return false;
  for (const charger of own) {
    const its = margins.get(charger);
    if (!its) continue;
    for (let kind = 0; kind < into.length; kind++) {
      const share = marginShare(MARGIN_KINDS[kind]!, its);
      if (share === null || share * HALF >= into[kind]!) continue;
      into[kind] = share * HALF;
      any = true;
    }
  }
  return any;
}

const bars = new Float64Array(MARGIN_KINDS.length);
const others = new Float64Array(MARGIN_KINDS.length);

/** Whether the bars of a drop look the same in two scenes, to half a pixel. */
export function sameBars(a: Scene, b: Scene, drop: string): boolean {
  barsOf(a, marginsOf(a.plan, a.site), drop, bars);
  barsOf(b, marginsOf(b.plan, b.site), drop, others);
  for (let kind = 0; kind < bars.length; kind++)
    if (
      Math.round(bars[kind]! * 2) !== Math.round(others[kind]! * 2) &&
      !(Number.isNaN(bars[kind]!) && Number.isNaN(others[kind]!))
    )
      return false;
  return true;
}

/**
 * Beside every drop its three margins, cord over branch over volts, from a center mark: to the right what is left, to
 * the left, hatched, what is missing. Past full scale a bar ends in a crossbar. Each color is one path.
 */
export function drawMarginBars(pen: BoardPen, frame: Frame, marks: readonly DropMark[], radius: number): void {
  const { scale, left, top, ink, scene } = frame;
  const margins = marginsOf(scene.plan, scene.site);
  const size = namePx(scale) / 12;
  const half = HALF * size;
  const high = HIGH * size;
  const step = STEP * size;
  const ground = new Path2D();
  const center = new Path2D();
  const pass = new Path2D();
  const fail = new Path2D();
  const hatch = new Path2D();
  for (const { drop } of marks) {
    if (!barsOf(scene, margins, drop.id, bars)) continue;
    const hang = drop.retractor ?? drop.box;
    const middle = Math.round(left + hang[0] * scale + radius + 5 + half) + 0.5;
    const first = Math.round(top - hang[1] * scale - radius + 6);
    ground.rect(middle - half - 1, first - 2, half * 2 + 2, step * 2 + high + 4);
    center.moveTo(middle, first - 1.5);
    center.lineTo(middle, first + step * 2 + high + 1.5);
    for (let kind = 0; kind < bars.length; kind++) {
      const bar = bars[kind]!;
      if (Number.isNaN(bar)) continue;
      const long = Math.max(1, Math.min(half, Math.abs(bar * size)));
      const y = first + kind * step;
      const short = bar < 0;
      if (Math.abs(bar) > HALF) {
        const end = short ? middle - half : middle + half;
        center.moveTo(end, y - 1);
        center.lineTo(end, y + high + 1);
      }
      if (!short) {
        pass.rect(middle, y, long, high);
        continue;
      }
      fail.rect(middle - long, y, long, high);
      for (let x = middle - long; x + high <= middle + 0.5; x += HATCH) {
        hatch.moveTo(x, y + high);
        hatch.lineTo(x + high, y);
      }
    }
  }
  pen.fillStyle = ink.paper;
  pen.fill(ground);
  pen.fillStyle = ink.pass;
  pen.fill(pass);
  pen.strokeStyle = ink.fail;
  pen.lineWidth = 1;
  pen.stroke(fail);
  pen.stroke(hatch);
  pen.strokeStyle = ink.ink;
  pen.stroke(center);
}
