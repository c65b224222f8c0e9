import { cordsOf } from '../../../calc/plan/margins.ts';
import { cordAtRest, cordOut } from '../../../calc/space/cord-shape.ts';
import { raisedAt } from '../../../calc/space/oblique.ts';
import { kept } from '../../../routing/kept/kept.ts';
import type { Reach } from '../../../routing/reach/reach-result.ts';
import type { Drop, Point2, Rules } from '../../../routing/site/site.ts';
import type { DropMark } from '../kinds/drops.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';
import { chargersByDrop } from '../scene/chargers-by-drop.ts';

/** Pixels to a foot from which the cords at rest, and those that are out, can be told apart. */
const REST_FROM = 2;
const OUT_FROM = 4;

const restLine = kept((drop: Drop, rules: Rules): readonly Point2[] => {
  const rest = cordAtRest(drop, rules);
  return rest ? rest.map((at) => raisedAt(at)) : [];
});

const outLine = kept((reach: Reach, drop: Drop, rules: Rules): readonly Point2[] =>
  cordOut(drop, rules, reach).map((at) => raisedAt(at)),
);

/** The cords of drops: at rest with the connector, and out to the inlet of their worst case as they hang. */
export function drawCords(pen: BoardPen, frame: Frame, marks: readonly DropMark[]): void {
  const { ink, scale, left, top, chosen, scene } = frame;
  if (scale < REST_FROM) return;
  const { site, plan } = scene;
  pen.lineCap = 'round';
  pen.strokeStyle = ink.ink;
  if (scale >= OUT_FROM || chosen) {
    const chargers = chargersByDrop(site.chargers);
    pen.beginPath();
    for (const { drop } of marks)
      for (const charger of chargers.get(drop.id) ?? [])
        for (const reach of cordsOf(plan, site, charger)) traceLine(pen, frame, outLine(reach, drop, site.rules));
    pen.globalAlpha = chosen ? 1 : 0.55;
    pen.lineWidth = chosen ? 2 : 0.9;
    pen.stroke();
    pen.globalAlpha = 1;
  }
  pen.beginPath();
  const ends: Point2[] = [];
  for (const { drop } of marks) {
    const line = restLine(drop, site.rules);
    traceLine(pen, frame, line);
    if (line[1]) ends.push(line[1]);
  }
  pen.lineWidth = chosen ? 2.4 : 1.4;
  pen.stroke();
  pen.lineCap = 'butt';
  pen.fillStyle = ink.ink;
  const half = Math.min(3, Math.max(1.2, scale * 0.2));
  for (const [x, y] of ends) pen.fillRect(left + x * scale - half, top - y * scale - half, 2 * half, 2 * half);
}
