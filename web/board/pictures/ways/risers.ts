import { positionsIn } from '../../../../routing/plane/box-index.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { RacewayMark } from '../../kinds/raceways.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { halo } from '../stalls/drops.ts';

const RISERS_FROM = 3;
const WORDS_FROM = 12;
/** A leg that goes less than this aside, feet, goes straight up or down. */
const UPRIGHT = 0.05;

/**
 * Where a raceway goes up or down: a ring with a point in it where it comes up toward the eye, with a cross where it
 * goes down, seen the way it was drawn; and between which elevations.
 */
export function drawRisers(pen: BoardPen, frame: Frame, marks: readonly RacewayMark[]): void {
  const { scale, left, top, ink, units } = frame;
  if (scale < RISERS_FROM) return;
  const radius = Math.min(7, Math.max(4, scale * 0.5));
  for (const { raceway } of marks)
    for (let i = 1; i < raceway.path.length; i++) {
      const from = raceway.path[i - 1]!;
      const to = raceway.path[i]!;
      if (Math.hypot(to[0] - from[0], to[1] - from[1]) > UPRIGHT || Math.abs(to[2] - from[2]) < UPRIGHT) continue;
      const x = left + to[0] * scale;
      const y = top - to[1] * scale;
      pen.beginPath();
      pen.arc(x, y, radius, 0, 2 * Math.PI);
      pen.fillStyle = ink.sheet;
      pen.fill();
      if (to[2] < from[2]) {
        const d = radius * 0.7;
        pen.moveTo(x - d, y - d);
        pen.lineTo(x + d, y + d);
        pen.moveTo(x + d, y - d);
        pen.lineTo(x - d, y + d);
      }
      pen.strokeStyle = ink.ink;
      pen.lineWidth = 1.2;
      pen.stroke();
      if (to[2] > from[2]) {
        pen.beginPath();
        pen.arc(x, y, radius * 0.35, 0, 2 * Math.PI);
        pen.fillStyle = ink.ink;
        pen.fill();
      }
      if (scale < WORDS_FROM) continue;
      pen.textAlign = 'left';
      pen.textBaseline = 'middle';
      const way = to[2] > from[2] ? 'up' : 'down';
      const words = `${way} ${printLength(Math.abs(to[2] - from[2]), units)}`;
      // Where it stands on equipment, the words stand clear of that and of its working space.
      const on = positionsIn(frame.scene.equipment, { minX: to[0], maxX: to[0], minY: to[1], maxY: to[1] })[0];
      const box = on === undefined ? undefined : frame.scene.equipment.items[on];
      const aside = box ? Math.max(left + box.maxX * scale, x + radius) : x + radius;
      halo(pen, frame, words, aside + 5, y + radius + 9, 400, ink.soft);
    }
}
