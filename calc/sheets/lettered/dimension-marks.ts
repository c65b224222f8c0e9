import { type DimensionString, OVERSHOOT, onSheet, type StringFigure, TICK } from '../pdf/kit/labels/dimension.ts';
import type { DimensionMark } from './mark.ts';

/** The dimensions of a string one by one, with letters of a height of capitals, points. */
export function dimensionMarks(
  { axis, at, marks }: DimensionString,
  figures: readonly (StringFigure | null)[],
  layer: DimensionMark['layer'],
  height: number,
): DimensionMark[] {
  const turn = axis === 'x' ? 0 : 90;
  return marks.slice(1).map((b, i): DimensionMark => {
    const a = marks[i]!;
    const figure = figures[i] ?? null;
    return {
      kind: 'dimension',
      layer,
      from: onSheet(axis, a.on, at),
      to: onSheet(axis, b.on, at),
      fromOrigin: onSheet(axis, a.on, a.from ?? at),
      toOrigin: onSheet(axis, b.on, b.from ?? at),
      turn,
      feet: Math.abs(b.feet - a.feet),
      figure: figure && {
        words: figure.text,
        at: axis === 'x' ? [figure.area.x, figure.area.y] : [figure.area.x + figure.area.width, figure.area.y],
        width: axis === 'x' ? figure.area.width : figure.area.height,
        height,
        turn,
      },
      tick: TICK,
      past: OVERSHOOT,
    };
  });
}
