import type { Plan } from '../../../../calc/plan/plan-shape.ts';
import { kept } from '../../../../routing/kept/kept.ts';
import type { Point3 } from '../../../../routing/site/site.ts';
import type { RacewayMark } from '../../kinds/raceways.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { halo } from '../stalls/drops.ts';

const WORDS_FROM = 4;
/** Pixels from the beginning of a raceway, where the name of its equipment stands. */
const CLEAR = 60;

/** What lies in each raceway: "3 of 1\" EMT, 1/2\" EMT". */
const conduitsIn = kept((conduits: Plan['conduits']): ReadonlyMap<string, string> => {
  const counts = new Map<string, Map<string, number>>();
  for (const { method, tradeSize, raceways } of conduits) {
    const size = `${tradeSize ? `${tradeSize}" ` : ''}${method}`;
    for (const raceway of new Set(raceways)) {
      const own = counts.get(raceway) ?? new Map<string, number>();
      counts.set(raceway, own.set(size, (own.get(size) ?? 0) + 1));
    }
  }
  const words = (own: ReadonlyMap<string, number>): string =>
    [...own].map(([size, count]) => (count === 1 ? size : `${count} of ${size}`)).join(', ');
  return new Map([...counts].map(([raceway, own]) => [raceway, words(own)]));
});

/** For a person who prices it: the conduits in each raceway, beside its longest leg. */
export function drawConduitWords(
  pen: BoardPen,
  frame: Frame,
  marks: readonly RacewayMark[],
  conduits: Plan['conduits'],
): void {
  const { scale, left, top, ink } = frame;
  if (scale < WORDS_FROM) return;
  const words = conduitsIn(conduits);
  pen.textBaseline = 'middle';
  for (const { raceway } of marks) {
    const said = words.get(raceway.id);
    const [from, to] = longestLeg(raceway.path);
    pen.font = lettering(namePx(scale), 600);
    const room = Math.hypot(to[0] - from[0], to[1] - from[1]) * scale;
    const width = said ? pen.measureText(said).width : 0;
    // Branches cross their trunk in the middle: words stand in a half, and those of a long raceway where it begins.
    if (!said || width > room * 0.4) continue;
    const share = width + 2 * CLEAR < room * 0.6 ? (width / 2 + CLEAR) / room : 0.75;
    const x = left + (from[0] + (to[0] - from[0]) * share) * scale;
    const y = top - (from[1] + (to[1] - from[1]) * share) * scale;
    const along = Math.atan2(-(to[1] - from[1]), to[0] - from[0]);
    pen.save();
    pen.translate(x, y);
    // Read from below or from the right, as lettering on a drawing is.
    pen.rotate(along > Math.PI / 2 - 0.01 ? along - Math.PI : along <= -Math.PI / 2 - 0.01 ? along + Math.PI : along);
    pen.textAlign = 'center';
    // Branches stop short of the words, as lines of a drawing do.
    pen.fillStyle = ink.paper;
    pen.fillRect(-width / 2 - 3, -23, width + 6, 15);
    halo(pen, frame, said, 0, -15, 600, ink.ink);
    pen.restore();
  }
  pen.textAlign = 'left';
}

function longestLeg(path: readonly Point3[]): readonly [Point3, Point3] {
  let best: readonly [Point3, Point3] = [path[0]!, path[1]!];
  let most = 0;
  for (let i = 1; i < path.length; i++) {
    const length = Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
    if (length > most) {
      best = [path[i - 1]!, path[i]!];
      most = length;
    }
  }
  return best;
}
