import type { Point2 } from '../../../../routing/site/site.ts';
import type { Hatch } from '../../details/detail.ts';
import { type Area, right, top } from '../kit/area.ts';
import { GREY, PALE, PENS } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';

/** Fills an area by what it is made of: earth in groups of slanted lines, concrete in grains, paving dark, fill in dots. */
export function drawHatch(pen: Pen, area: Area, hatch: Hatch): void {
  if (area.width <= 0 || area.height <= 0) return;
  pen.clipped(area, () => {
    if (hatch === 'earth') drawEarth(pen, area);
    else if (hatch === 'concrete') drawGrains(pen, area, 0.35, true);
    else if (hatch === 'fill') drawGrains(pen, area, 0.12, false);
    else {
      pen.fillArea(area, PALE);
      slanted(pen, area, 3.2);
    }
  });
}

const CELL = 13;

/** Squares of three slanted lines, turned from one to the next. */
function drawEarth(pen: Pen, area: Area): void {
  const lines: (readonly [Point2, Point2])[] = [];
  const columns = Math.ceil(area.width / CELL);
  const rows = Math.ceil(area.height / CELL);
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const [x, y] = [area.x + i * CELL, top(area) - (j + 1) * CELL];
      for (const k of [1, 2, 3]) {
        const off = (k * CELL) / 4;
        lines.push(
          (i + j) % 2 === 0
            ? [
                [x + off - 3, y + CELL / 2 - 4],
                [x + off + 4, y + CELL / 2 + 4],
              ]
            : [
                [x + off - 3, y + CELL / 2 + 4],
                [x + off + 4, y + CELL / 2 - 4],
              ],
        );
      }
    }
  pen.lines(lines, PENS.existingHair);
}

function slanted(pen: Pen, area: Area, step: number): void {
  const lines: (readonly [Point2, Point2])[] = [];
  for (let x = area.x - area.height; x < right(area); x += step)
    lines.push([
      [x, area.y],
      [x + area.height, top(area)],
    ]);
  pen.lines(lines, PENS.existingHair);
}

/** Grains strewn evenly but without rows: the steps of two irrational numbers. */
function drawGrains(pen: Pen, area: Area, perSquare: number, stones: boolean): void {
  const count = Math.min(1500, Math.ceil((area.width * area.height * perSquare) / 36));
  const triangles: Point2[][] = [];
  for (let i = 1; i <= count; i++) {
    const x = area.x + area.width * ((i * 0.754877666) % 1);
    const y = area.y + area.height * ((i * 0.569840291) % 1);
    if (stones && i % 5 === 0)
      triangles.push([
        [x, y],
        [x + 3, y + 0.6],
        [x + 1.2, y + 2.6],
        [x, y],
      ]);
    else pen.circle([x, y], 0.35, null, GREY);
  }
  pen.lines(triangles, PENS.existingHair);
}
