import { isPlainGrid } from '../../../../routing/site/place/grid-frame.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { lettering } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { type ScreenLine, turnedGridlines } from './turned-gridlines.ts';

/** Radius of a bubble, pixels. */
export const BUBBLE = 13;

interface Edges {
  readonly upper: number;
  readonly lower: number;
  readonly leftmost: number;
  readonly right: number;
}

/** Gridlines run past the edge of the drawing, or to the edge of the view where that is nearer. */
function edgesOf({ scale, left, top, width, height }: Frame, extent: Frame['box']): Edges {
  const clear = BUBBLE * 2.4;
  return {
    upper: Math.max(BUBBLE + 4, Math.min(top - extent.maxY * scale - clear, height - BUBBLE - 4)),
    lower: Math.min(height, top - extent.minY * scale + BUBBLE),
    leftmost: Math.max(0, left + extent.minX * scale - BUBBLE),
    right: Math.min(width - BUBBLE - 4, Math.max(left + extent.maxX * scale + clear, BUBBLE + 4)),
  };
}

const turnedLines = (frame: Frame, gridlines: Site['gridlines'], extent: Frame['box']): ScreenLine[] =>
  turnedGridlines(frame, gridlines, extent, BUBBLE * 2.4, BUBBLE + 4);

export function drawBoardGridlines(
  pen: BoardPen,
  frame: Frame,
  gridlines: Site['gridlines'],
  extent: Frame['box'],
): void {
  const { scale, left, top, ink } = frame;
  if (scale < 0.4) return;
  pen.beginPath();
  if (isPlainGrid(gridlines)) {
    const { upper, lower, leftmost, right } = edgesOf(frame, extent);
    for (const { at } of gridlines.x) {
      pen.moveTo(left + at * scale, upper + BUBBLE);
      pen.lineTo(left + at * scale, lower);
    }
    for (const { at } of gridlines.y) {
      pen.moveTo(leftmost, top - at * scale);
      pen.lineTo(right - BUBBLE, top - at * scale);
    }
  } else
    for (const { far, named } of turnedLines(frame, gridlines, extent)) {
      pen.moveTo(...far);
      pen.lineTo(...named);
    }
  pen.strokeStyle = ink.ruleStrong;
  pen.lineWidth = 0.7;
  if (scale >= 1) pen.setLineDash([14, 4, 3, 4]);
  pen.stroke();
  pen.setLineDash([]);
}

export interface Bubble {
  readonly label: string;
  readonly x: number;
  readonly y: number;
  /** Where its line goes from it. */
  readonly inward: readonly [number, number];
}

/** Bubbles of lines that lie close stand one behind the other along their lines; where there is no room, one is left out. */
function standingApart(bubbles: readonly Bubble[]): readonly Bubble[] {
  const step = BUBBLE * 2 + 1;
  const placed: Bubble[] = [];
  for (const bubble of bubbles) {
    const place = [0, 1, 2]
      .map((n) => ({ ...bubble, x: bubble.x + bubble.inward[0] * step * n, y: bubble.y + bubble.inward[1] * step * n }))
      .find((at) => placed.every((other) => Math.hypot(other.x - at.x, other.y - at.y) >= step));
    if (place) placed.push(place);
  }
  return placed;
}

/** Where the bubbles stand on the screen; their size is `BUBBLE` from the middle. */
export function bubblesOf(frame: Frame, gridlines: Site['gridlines'], extent: Frame['box']): readonly Bubble[] {
  const { scale, left, top } = frame;
  if (scale < 0.4) return [];
  const { upper, right } = edgesOf(frame, extent);
  const bubbles = isPlainGrid(gridlines)
    ? [
        ...gridlines.x.map(({ label, at }) => ({ label, x: left + at * scale, y: upper, inward: [0, 1] as const })),
        ...gridlines.y.map(({ label, at }) => ({ label, x: right, y: top - at * scale, inward: [-1, 0] as const })),
      ]
    : turnedLines(frame, gridlines, extent).map(({ label, far, named: [x, y] }) => {
        const long = Math.hypot(far[0] - x, far[1] - y) || 1;
        return { label, x, y, inward: [(far[0] - x) / long, (far[1] - y) / long] as const };
      });
  return standingApart(bubbles);
}

/** The names of the gridlines in their bubbles, over everything: they are what the crew measures from. */
export function drawBubbles(pen: BoardPen, frame: Frame, gridlines: Site['gridlines'], extent: Frame['box']): void {
  const { ink } = frame;
  pen.font = lettering(12);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const { label, x, y } of bubblesOf(frame, gridlines, extent)) {
    pen.beginPath();
    pen.arc(x, y, BUBBLE, 0, 2 * Math.PI);
    pen.fillStyle = ink.paper;
    pen.fill();
    pen.strokeStyle = ink.ruleStrong;
    pen.lineWidth = 1;
    pen.stroke();
    pen.fillStyle = ink.ink;
    pen.fillText(label, x, y + 1);
  }
}
