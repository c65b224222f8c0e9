import type { PullpointMark } from '../../kinds/pullpoints.ts';
import type { RacewayMark } from '../../kinds/raceways.ts';
import type { LineColor, RunMark } from '../../scene/mark.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { traceLine } from '../outline.ts';
import { laneLegs } from './lane-legs.ts';
import { traceBeside, traceLane } from './lanes.ts';

/** Below this many pixels to a foot the conductors of a raceway cannot be told apart: it is one line. */
const LANES_FROM = 2;

/** Raceways shorter than this many pixels are not drawn; risers have no length in plan. */
const LEAST_LINE = 8;

const laneGap = (scale: number): number => Math.min(3, Math.max(1, scale * 0.24));
const wallOf = (scale: number): number => Math.min(3, scale * 0.28);
const tubeWidth = (scale: number): number => laneGap(scale) * 3 + wallOf(scale);

/** Raceways as the tubes that they are; what lies in them is drawn by `drawRuns`. Underground ones have a broken edge. */
export function drawRaceways(pen: BoardPen, frame: Frame, marks: readonly RacewayMark[]): void {
  const { ink, scale, chosen } = frame;
  for (const buried of [true, false]) {
    const some = marks.filter(
      (mark) =>
        (mark.raceway.place === 'underground') === buried &&
        Math.max(mark.maxX - mark.minX, mark.maxY - mark.minY) * scale >= LEAST_LINE,
    );
    if (some.length === 0) continue;
    pen.beginPath();
    for (const { raceway } of some) traceLine(pen, frame, raceway.path);
    pen.lineJoin = 'round';
    if (scale < LANES_FROM) {
      pen.strokeStyle = ink.ink;
      pen.lineWidth = chosen ? 3 : 1.2;
      pen.stroke();
      continue;
    }
    if (buried) pen.setLineDash([8, 4]);
    strokeTube(pen, frame, chosen ? 3 : 1);
    pen.setLineDash([]);
  }
}

function strokeTube(pen: BoardPen, { ink, scale, chosen }: Frame, edge: number): void {
  pen.strokeStyle = chosen ? ink.ink : ink.tubeEdge;
  pen.lineWidth = tubeWidth(scale) + 2 * edge;
  pen.stroke();
  pen.strokeStyle = ink.tube;
  pen.lineWidth = tubeWidth(scale);
  pen.stroke();
}

const COLORS: readonly LineColor[] = ['black', 'red', 'blue', 'brown', 'orange', 'yellow'];

/**
 * Runs as their line conductors, each in the color that the trade gives its phase and on its own side of the raceway:
 * a two-pole circuit shows two colors, and a shared raceway all that travel in it.
 */
export function drawRuns(pen: BoardPen, frame: Frame, marks: readonly RunMark[]): void {
  const { ink, scale, chosen } = frame;
  if (scale < LANES_FROM && !chosen) return;
  const gap = laneGap(scale) * (chosen ? 1.5 : 1);
  // The tube goes along where there is no raceway, on the taps at both ends.
  pen.beginPath();
  for (const { path } of marks) traceLine(pen, frame, path);
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  pen.strokeStyle = chosen ? ink.ink : ink.tubeEdge;
  pen.lineWidth = gap * 3 + wallOf(scale) + 2;
  pen.stroke();
  pen.strokeStyle = ink.tube;
  pen.lineWidth = gap * 3 + wallOf(scale);
  pen.stroke();
  pen.lineWidth = Math.max(1, gap * 0.72);
  for (const color of COLORS) {
    pen.beginPath();
    let any = false;
    for (const { lanes, path } of marks)
      for (const lane of lanes)
        if (lane.color === color) {
          traceBeside(pen, frame, path, lane.lane * gap);
          any = true;
        }
    if (!any) continue;
    pen.strokeStyle = ink[color];
    pen.stroke();
  }
}

/**
 * Runs as `drawRuns` shows them, for many at once: what they share is drawn once, and the tubes that they lie in are
 * the raceways', but for the taps at their ends.
 */
export function drawAllRuns(pen: BoardPen, frame: Frame, marks: readonly RunMark[]): void {
  const { ink, scale, left, top } = frame;
  const gap = laneGap(scale);
  pen.beginPath();
  for (const { run, path } of marks)
    for (let i = 1; i < path.length; i++) if (run.legs[i - 1] === null) traceLine(pen, frame, [path[i - 1]!, path[i]!]);
  strokeTube(pen, frame, 1);
  const legs = laneLegs(marks);
  pen.lineWidth = Math.max(1, gap * 0.72);
  pen.lineCap = 'round';
  const up = (way: readonly [number, number] | null): readonly [number, number] | null => way && [way[0], -way[1]];
  for (const color of COLORS) {
    pen.beginPath();
    let any = false;
    for (const { x, y, ux, uy, before, lanes } of legs)
      for (const lane of lanes) {
        if (lane.color !== color) continue;
        any = true;
        const [px, py] = [left + x * scale, top - y * scale];
        traceLane(pen, px, py, [ux, -uy], lane.length * scale, lane.lane * gap, up(before), up(lane.after));
      }
    if (!any) continue;
    pen.strokeStyle = ink[color];
    pen.stroke();
  }
  pen.lineCap = 'butt';
}

/** Pull boxes and conduit bodies: a box across the raceway. */
export function drawPullpoints(pen: BoardPen, frame: Frame, marks: readonly PullpointMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  if (scale < 1) return;
  const half = Math.min(8, Math.max(4, scale * 0.6));
  pen.beginPath();
  for (const { pullpoint } of marks)
    pen.rect(left + pullpoint.at[0] * scale - half, top - pullpoint.at[1] * scale - half, half * 2, half * 2);
  pen.fillStyle = ink.sheet;
  pen.fill();
  pen.strokeStyle = ink.ink;
  pen.lineWidth = chosen ? 3.4 : 1.4;
  pen.stroke();
}
