import type { Point2 } from '../../../../routing/site/site.ts';
import { clockOf } from '../../../day/clock.ts';
import type { DayView } from '../../../day/figures/day-view.ts';
import { marksUpTo } from '../../../words/axis-marks.ts';
import type { Area } from '../kit/area.ts';
import { PALE, PENS } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';

/** Room left of a picture of a day for its figures, and under it for its hours, in sizes of the lettering. */
export const LEFT = 5;
export const UNDER = 1.8;

const HAIR = { ...PENS.hair, colour: PALE };

/** The part of an area in which a picture of a day is drawn. */
export function plotOf({ x, y, width, height }: Area, small: number, top = 1.6): Area {
  const left = LEFT * small;
  const under = UNDER * small;
  return { x: x + left, y: y + under, width: width - left - small, height: height - under - top * small };
}

export const xOf = (plot: Area, { steps, step }: DayView, minute: number): number =>
  plot.x + (plot.width * minute) / (steps * step);

/** The hours under a picture, with faint lines up from them. */
export function drawHours(pen: Pen, plot: Area, view: DayView): void {
  const { small } = pen.lettering.sizes;
  const minutes = view.steps * view.step;
  const apart = [60, 120, 240].find((one) => (minutes / one) * 5 * small <= plot.width) ?? 480;
  const first = (apart - (view.from % apart)) % apart;
  for (let minute = first; minute <= minutes; minute += apart) {
    const x = xOf(plot, view, minute);
    pen.line(
      [
        [x, plot.y],
        [x, plot.y + plot.height],
      ],
      HAIR,
    );
    pen.text(clockOf(view.from + minute), [x, plot.y - 1.3 * small], { size: small, anchor: 'middle' });
  }
}

/** Figures up the side of a picture, so many units high. */
export function drawScale(pen: Pen, plot: Area, most: number): void {
  const { small } = pen.lettering.sizes;
  for (const value of marksUpTo(most)) {
    const y = plot.y + (plot.height * value) / most;
    pen.line(
      [
        [plot.x, y],
        [plot.x + plot.width, y],
      ],
      HAIR,
    );
    pen.text(String(value), [plot.x - 0.5 * small, y - 0.3 * small], { size: small, anchor: 'right' });
  }
  pen.line(
    [
      [plot.x, plot.y + plot.height],
      [plot.x, plot.y],
      [plot.x + plot.width, plot.y],
    ],
    PENS.thin,
  );
}

/** A line that keeps each value for its step; values past `most` are drawn at it. */
export function stairs(plot: Area, values: readonly number[], most: number): Point2[] {
  const x = (step: number): number => plot.x + (plot.width * step) / values.length;
  return values.flatMap((value, step): Point2[] => {
    const y = plot.y + (plot.height * Math.min(value, most)) / most;
    return [
      [x(step), y],
      [x(step + 1), y],
    ];
  });
}
