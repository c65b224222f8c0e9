import type { Area } from '../../../../calc/sheets/pdf/kit/area.ts';
import { type Paper, sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { DrawnSheet } from './drawn-sheets.ts';

const COLUMNS = 24;
export const FILLED_ROWS = 16;

/** Share of the field of a sheet, in small rectangles, that some line or letter comes to. */
export function filledOf({ texts, strokes }: DrawnSheet, paper: Paper): number {
  const { field } = sheetShape(paper);
  const seen = new Set<number>();
  const along = ([ax, ay]: Point2, [bx, by]: Point2, clip: Area | null): void => {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) / 10) + 1;
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps];
      if (clip && (x < clip.x || x > clip.x + clip.width || y < clip.y || y > clip.y + clip.height)) continue;
      const column = Math.floor(((x - field.x) / field.width) * COLUMNS);
      const row = Math.floor(((y - field.y) / field.height) * FILLED_ROWS);
      if (column >= 0 && column < COLUMNS && row >= 0 && row < FILLED_ROWS) seen.add(row * COLUMNS + column);
    }
  };
  for (const { corners } of texts) along(corners[0]!, corners[1]!, null);
  for (const { points, clip } of strokes) for (const [i, at] of points.slice(1).entries()) along(points[i]!, at, clip);
  return seen.size / (COLUMNS * FILLED_ROWS);
}
