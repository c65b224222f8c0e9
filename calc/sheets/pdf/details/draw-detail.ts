import type { Box } from '../../../../routing/plane/box.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Callout, type Detail, type DetailInk, detailExtent } from '../../details/detail.ts';
import { type Area, top } from '../kit/area.ts';
import { BLACK, type Ink, PENS, WHITE } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { CAP, LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { pointsPerFoot, type Scale } from '../kit/view/scales.ts';
import { type DimensionsOfSide, drawDetailDimensions, layDimensions, spreadApart } from './detail-dimensions.ts';
import { drawHatch } from './detail-hatches.ts';
import { detailScales } from './detail-scales.ts';

const INKS: Readonly<Record<DetailInk, Ink>> = {
  cut: PENS.heavy,
  conduit: PENS.medium,
  edge: PENS.plain,
  thin: PENS.thin,
  hidden: { ...PENS.thin, dash: [1.6, 1] },
  axis: { ...PENS.hair, dash: [5, 1, 1, 1] },
};

/** Share of an area that words beside the drawing may take. */
const WORDS = 0.34;
/** Points from the drawing to those words, for their leaders. */
const LEADERS = 24;

interface Laid {
  readonly scale: Scale;
  readonly perFoot: number;
  readonly extent: Box;
  readonly sides: Readonly<Record<'left' | 'bottom' | 'top', DimensionsOfSide>>;
  readonly words: readonly Worded[];
  readonly wordWidth: number;
}

interface Worded {
  readonly at: Point2;
  readonly lines: readonly string[];
}

/** The largest standard scale at which a detail with its dimensions and words goes into an area, and how it then lies. */
export function layDetail(detail: Detail, area: Area, units: Units, lettering: Lettering): Laid {
  const size = lettering.sizes.small;
  const extent = detailExtent(detail);
  const [wide, high] = [extent.maxX - extent.minX, extent.maxY - extent.minY];
  const words = detail.callouts.map(
    ({ at, text }: Callout): Worded => ({ at, lines: wrapped(text, area.width * WORDS, size, lettering) }),
  );
  const wordWidth = Math.max(0, ...words.flatMap(({ lines }) => lines.map((line) => lettering.width(line, size))));
  const laidAt = (scale: Scale): Laid => {
    const perFoot = pointsPerFoot(scale);
    const lay = (side: 'left' | 'bottom' | 'top'): DimensionsOfSide =>
      layDimensions(detail.dimensions, side, perFoot, units, lettering);
    return {
      scale,
      perFoot,
      extent,
      sides: { left: lay('left'), bottom: lay('bottom'), top: lay('top') },
      words,
      wordWidth,
    };
  };
  const scales = detailScales(units);
  for (const scale of scales) {
    const laid = laidAt(scale);
    const { left, bottom, top: over } = laid.sides;
    const isWide = wide * laid.perFoot + left.room + LEADERS + wordWidth <= area.width;
    if (isWide && high * laid.perFoot + bottom.room + over.room <= area.height) return laid;
  }
  return laidAt(scales.at(-1)!);
}

/** Draws a detail into the middle of an area: hatches, lines, dimensions, words with their leaders. */
export function drawDetail(pen: Pen, detail: Detail, laid: Laid, area: Area): void {
  const { perFoot, extent, sides, wordWidth } = laid;
  const [wide, high] = [(extent.maxX - extent.minX) * perFoot, (extent.maxY - extent.minY) * perFoot];
  const spareWidth = area.width - wide - sides.left.room - LEADERS - wordWidth;
  const spareHeight = area.height - high - sides.bottom.room - sides.top.room;
  const left = area.x + spareWidth / 2 + sides.left.room;
  const bottom = area.y + spareHeight / 2 + sides.bottom.room;
  const origin: Point2 = [left - extent.minX * perFoot, bottom - extent.minY * perFoot];
  const on = ([x, y]: Point2): Point2 => [origin[0] + x * perFoot, origin[1] + y * perFoot];
  for (const { box, hatch } of detail.regions) {
    const [x, y] = on([box.minX, box.minY]);
    const own: Area = { x, y, width: (box.maxX - box.minX) * perFoot, height: (box.maxY - box.minY) * perFoot };
    pen.fillArea(own, WHITE);
    drawHatch(pen, own, hatch);
  }
  for (const { at, radius, ink } of detail.circles) pen.circle(on(at), radius * perFoot, INKS[ink], WHITE);
  for (const { points, ink, closed = false } of detail.lines) pen.line(points.map(on), INKS[ink], closed);
  drawDetailDimensions(pen, sides.left, origin, left, perFoot);
  drawDetailDimensions(pen, sides.bottom, origin, bottom, perFoot);
  drawDetailDimensions(pen, sides.top, origin, bottom + high, perFoot);
  drawWords(pen, laid, on, { x: left + wide + LEADERS, y: area.y, width: wordWidth, height: area.height });
}

/** The words beside a drawing in one column, each as near to the height of its place as the others let it. */
function drawWords(pen: Pen, { words }: Laid, on: (at: Point2) => Point2, column: Area): void {
  const size = pen.lettering.sizes.small;
  const step = size * LEADING;
  const placed = words
    .map(({ at, lines }) => ({ lines, to: on(at), height: (lines.length - 1) * step + size * CAP }))
    .sort((a, b) => a.to[1] - b.to[1] || b.to[0] - a.to[0]);
  const middles = middlesOf(placed, column, step * 0.75);
  placed.forEach(({ lines, to, height }, i) => {
    const middle = middles[i]!;
    const first = middle + height / 2 - size * CAP;
    lines.forEach((line, k) => {
      pen.text(line, [column.x, first - k * step], { size });
    });
    const start: Point2 = [column.x - 3, middle];
    pen.line([start, [column.x - 9, middle], to], PENS.hair);
    pen.circle(to, 1.1, null, BLACK);
  });
}

/** Heights of the middles of words, so that none stand on one another and all stand in the column. */
function middlesOf(
  placed: readonly { readonly to: Point2; readonly height: number }[],
  column: Area,
  gap: number,
): readonly number[] {
  // As if all were of one line, with what they are higher put between them.
  let before = 0;
  const shifts = placed.map(({ height }) => {
    const shift = before + height / 2;
    before += height + gap;
    return shift;
  });
  const spread = spreadApart(
    placed.map(({ to }, i) => to[1] - shifts[i]!),
    0,
  );
  const low = column.y;
  const high = top(column) - before + gap;
  return spread.map((place, i) => Math.min(Math.max(place, low), Math.max(low, high)) + shifts[i]!);
}
