import { addTo } from '../../../../routing/lists/grouping.ts';
import { type Box, boxesMeet, boxOf, widened } from '../../../../routing/plane/box.ts';
import { finderBy } from '../../../../routing/plane/box-index.ts';
import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { Drawing, DrawnItem, DrawnSymbol, DrawnText, Extent } from '../../drawing/drawing.ts';
import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import { SYMBOLS } from '../../drawing/symbols.ts';
import { type Area, isWithinArea } from '../kit/area.ts';
import { inkOf, PALE, WHITE } from '../kit/ink.ts';
import type { LabelGround } from '../kit/labels/best-label-place.ts';
import { takeAlong, turnedAreas } from '../kit/labels/free-space.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { CAP } from '../kit/lettering/letters.ts';
import type { Pen } from '../kit/pen.ts';
import { shows, type View } from '../kit/view/view.ts';

/** Layers that a view of its own draws to the size of the sheet. */
const DRAWN_APART: ReadonlySet<LayerName> = new Set(['gridlines', 'gridLabels']);

/** Room that a symbol may reach past its point, feet. */
const SYMBOL_REACH = 3;
/** And words past theirs. */
const TEXT_REACH = 30;

/** Points a foot at which symbols are drawn: with the scale, but never too small to read nor as large as what they mark. */
export const symbolScale = (perFoot: number): number => Math.min(11, Math.max(5, perFoot));

/** Draws what of a drawing's lines and symbols lies in a view, and the words that stay; others are lettered apart, to fit. */
export function drawBasePlan(pen: Pen, view: View, { items }: Pick<Drawing, 'items'>, isMasked = true): void {
  if (pen.standing?.plan) return;
  const seen = seenOf(items, view.window).filter(
    (item) => !DRAWN_APART.has(item.layer) && (item.kind !== 'text' || item.stays),
  );
  const byLayer = new Map<LayerName, DrawnItem[]>();
  for (const item of seen) addTo(byLayer, item.layer, item);
  pen.clipped(view.area, () => {
    for (const layer of Object.keys(LAYERS) as LayerName[]) {
      const mine = byLayer.get(layer);
      if (mine) pen.onLayer(layer, () => drawItems(pen, view, layer, mine));
    }
    // Words that stay part the lines under them, whatever layer those are on.
    for (const item of seen)
      if (item.kind === 'text' && isWritten(item, view, pen.lettering))
        pen.onLayer(item.layer, () => drawStaying(pen, view, item, isMasked));
  });
}

/** What words that stay take of a view, and the lines of notes, dimensions and clouds, so that no other is written over them. */
export function takeStaying(
  { hard, heavy }: Pick<LabelGround, 'hard' | 'heavy'>,
  view: View,
  { items }: Drawing,
  lettering: Lettering,
): void {
  for (const item of seenOf(items, view.window)) {
    if (item.kind === 'line' && ANNOTATIONS.has(item.layer)) takeAlong(heavy, item.points.map(view.at), 0.8);
    if (item.kind !== 'text' || !item.stays || !isWritten(item, view, lettering)) continue;
    for (const area of areasOfText(item, view, lettering)) hard.take(area);
  }
}

/** @param tall height of its signs, in sizes of the font */
function areasOfText(item: DrawnText, view: View, lettering: Lettering, tall = 1): readonly Area[] {
  const size = sizeOf(item, view, lettering);
  const width = lettering.width(item.text, size, 'regular');
  const [ux, uy] = direction(item.turn);
  const [x, y] = view.at(item.at);
  const back = width * BACK[item.anchor];
  return turnedAreas([x - back * ux, y - back * uy], width, tall * size, item.turn);
}

/** A text stands in the one view that shows its place, the figure of a dimension where it is whole: plans of all have it. */
function isWritten(item: DrawnText, view: View, lettering: Lettering): boolean {
  if (!shows(view.window, item.at)) return false;
  const { area } = view;
  return (
    item.layer !== 'dimensions' ||
    // A view may end at the capitals of its words, as those of sections do.
    areasOfText(item, view, lettering, CAP).every((box) => isWithinArea(box, area))
  );
}

/** Layers of what a person put on the plan to be read. */
const ANNOTATIONS: ReadonlySet<LayerName> = new Set(['notes', 'dimensions', 'revisions']);

/** Share of its width by which a text stands back from its place. */
const BACK = { left: 0, middle: 0.5, right: 1 } as const;

/** As high as on the plan, but never too small to read; points of the font. */
const sizeOf = ({ height }: DrawnText, { perFoot }: View, { sizes }: Lettering): number =>
  Math.max(sizes.small, (height * perFoot) / CAP);

/** As far as an item may reach, feet. */
function reachOf(item: DrawnItem): Box {
  if (item.kind === 'line') return boxOf(item.points);
  const reach = item.kind === 'circle' ? item.radius : item.kind === 'text' ? TEXT_REACH : SYMBOL_REACH;
  return widened(boxOf([item.at]), reach);
}

const itemsIn = finderBy(reachOf);

/** A drawing of fewer items is looked through sooner than indexed. */
const MANY = 1000;

/** Items of which something lies in a window. */
const seenOf = (items: readonly DrawnItem[], window: Extent): readonly DrawnItem[] =>
  items.length < MANY ? items.filter((item) => boxesMeet(reachOf(item), window)) : itemsIn(items, window);

function drawItems(pen: Pen, view: View, layer: LayerName, items: readonly DrawnItem[]): void {
  const ink = inkOf(layer);
  const open: Point2[][] = [];
  for (const item of items) {
    if (item.kind === 'line') {
      const points = item.points.map(view.at);
      if (layer === 'columns') pen.fill(points, PALE);
      open.push(item.closed ? [...points, points[0]!] : points);
    }
  }
  pen.lines(open, ink);
  for (const item of items) {
    if (item.kind === 'circle') pen.circle(view.at(item.at), item.radius * view.perFoot, ink);
    else if (item.kind === 'symbol') drawSymbol(pen, item.symbol, view.at(item.at), symbolScale(view.perFoot), layer);
  }
}

/** White round words that stay, points. */
const ROOM = 1;

function drawStaying(pen: Pen, view: View, item: DrawnText, isMasked: boolean): void {
  const size = sizeOf(item, view, pen.lettering);
  const at = view.at(item.at);
  if (isMasked) {
    const [ux, uy] = direction(item.turn);
    const width = pen.lettering.width(item.text, size);
    const from = -width * BACK[item.anchor] - ROOM;
    const place = (along: number, up: number): Point2 => [at[0] + along * ux - up * uy, at[1] + along * uy + up * ux];
    const [to, low, high] = [from + width + 2 * ROOM, -ROOM, size * CAP + ROOM];
    pen.fill([place(from, low), place(to, low), place(to, high), place(from, high)], WHITE);
  }
  pen.text(item.text, at, { size, colour: inkOf(item.layer).colour, anchor: item.anchor, turn: item.turn });
}

/** Draws a symbol of the plan about a point of the sheet, so many points a foot of it. */
export function drawSymbol(
  pen: Pen,
  symbol: DrawnSymbol['symbol'],
  [x, y]: Point2,
  perFoot: number,
  layer: LayerName,
): void {
  const ink = inkOf(layer);
  const { circles, lines } = SYMBOLS[symbol];
  for (const { points, closed } of lines)
    pen.line(
      points.map(([px, py]): Point2 => [x + px * perFoot, y + py * perFoot]),
      ink,
      closed,
    );
  for (const { radius, filled } of circles) pen.circle([x, y], radius * perFoot, ink, filled ? ink.colour : undefined);
}
