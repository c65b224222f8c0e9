import { clippedLine } from '../../../../routing/plane/clip-line.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { nearestFoot } from '../../../words/lengths.ts';
import type { FeederMark } from '../../kinds/feeders.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { halo } from '../stalls/drops.ts';

/** Where a feeder leaves the view, and what it goes to. */
export interface FeederExit {
  readonly equipment: string;
  /** Where the link crosses the edge of the view, pixels. */
  readonly at: Point2;
  /** From there on to the equipment, straight, feet. */
  readonly beyond: number;
  /** The part of the link in view, pixels. */
  readonly seen: number;
}

/** Nearer to the edge than this beyond the words, pixels, equipment's own words would be met. */
const NEAR = 60;
/** With more feeders in view than these, words at their ends would be a thicket. */
const MOST = 12;

/**
 * Equipment out of view at the other end of a feeder that is in it: a service stands far from the lot as often as not, and
 * the whole lot is shown without it. Each is told once.
 */
export function feederExits(
  { scale, left, top, width, height, scene }: Pick<Frame, 'scale' | 'left' | 'top' | 'width' | 'height' | 'scene'>,
  marks: readonly FeederMark[],
): readonly FeederExit[] {
  if (marks.length > MOST) return [];
  const view = { minX: -left / scale, maxX: (width - left) / scale, minY: (top - height) / scale, maxY: top / scale };
  const exits = new Map<string, FeederExit>();
  for (const { id, from, to } of marks) {
    const kept = clippedLine(from, to, view);
    const feeder = byId(scene.site.feeders).get(id);
    if (!kept || !feeder) continue;
    const out: readonly (readonly [string, number, number])[] = [
      ...(kept.begins > 0 && kept.ends === 1 ? [[feeder.from, kept.begins, kept.begins] as const] : []),
      ...(kept.ends < 1 && kept.begins === 0 ? [[feeder.to, kept.ends, 1 - kept.ends] as const] : []),
    ];
    for (const [equipment, share, rest] of out) {
      if (exits.has(equipment)) continue;
      const x = from[0] + (to[0] - from[0]) * share;
      const y = from[1] + (to[1] - from[1]) * share;
      const beyond = rest * Math.hypot(to[0] - from[0], to[1] - from[1]);
      const seen = (kept.ends - kept.begins) * Math.hypot(to[0] - from[0], to[1] - from[1]) * scale;
      exits.set(equipment, { equipment, at: [left + x * scale, top - y * scale], beyond, seen });
    }
  }
  return [...exits.values()];
}

/** The corners where legend, scale and buttons lie over the board, pixels. */
const CORNER = { width: 150, height: 150 };

/** Words beside the line where it leaves the view. */
export function drawFeederExits(pen: BoardPen, frame: Frame, marks: readonly FeederMark[]): void {
  const { ink, width, height, units, scale } = frame;
  const px = namePx(scale);
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  for (const { equipment, at, beyond, seen } of feederExits(frame, marks)) {
    const words = `to ${equipment}, ${nearestFoot(beyond, units)}`;
    pen.font = lettering(px, 600);
    const long = pen.measureText(words).width;
    const x = Math.max(6, Math.min(at[0] + 6, width - long - 6));
    // Over the line, but under it where what it comes from is near and has its own name above.
    const side = seen < long + NEAR ? px + 3 : -px - 3;
    const y = Math.max(px, Math.min(at[1] + side, height - px));
    if (y > height - CORNER.height && (x < CORNER.width || x + long > width - CORNER.width)) continue;
    halo(pen, frame, words, x, y, 600, ink.soft);
  }
}
