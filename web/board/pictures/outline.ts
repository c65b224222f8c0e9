import type { Point2 } from '../../../routing/site/site.ts';
import type { BoardPen, Frame } from './frame.ts';

/** Adds a closed outline to the pen's path. */
export function traceOutline(pen: BoardPen, { scale, left, top }: Frame, points: readonly Point2[]): void {
  for (let i = 0; i < points.length; i++) {
    const [x, y] = points[i]!;
    if (i === 0) pen.moveTo(left + x * scale, top - y * scale);
    else pen.lineTo(left + x * scale, top - y * scale);
  }
  pen.closePath();
}

/** Adds an open line to the pen's path. */
export function traceLine(pen: BoardPen, { scale, left, top }: Frame, points: readonly (readonly number[])[]): void {
  for (let i = 0; i < points.length; i++) {
    const point = points[i]!;
    if (i === 0) pen.moveTo(left + point[0]! * scale, top - point[1]! * scale);
    else pen.lineTo(left + point[0]! * scale, top - point[1]! * scale);
  }
}

/** Fills the current path with slanting lines: what may not be built in. */
export function hatch(pen: BoardPen, frame: Frame, color: string, step: number, crossed = false): void {
  pen.save();
  pen.clip();
  pen.beginPath();
  // The lines hang on the site and not on the screen, so that they do not swim while the drawing is pushed.
  const start = (((frame.left + frame.top) % step) + step) % step;
  for (let d = start - frame.height; d < frame.width + frame.height; d += step) {
    pen.moveTo(d, 0);
    pen.lineTo(d - frame.height, frame.height);
  }
  // The other way these hang on left less top.
  const across = (((frame.left - frame.top) % step) + step) % step;
  if (crossed)
    for (let d = across - frame.height; d < frame.width + frame.height; d += step) {
      pen.moveTo(d, 0);
      pen.lineTo(d + frame.height, frame.height);
    }
  pen.strokeStyle = color;
  pen.lineWidth = 1;
  pen.stroke();
  pen.restore();
}
