import type { Point2 } from '../../../../routing/site/site.ts';
import { type Area, top } from '../kit/area.ts';
import { BLACK, GREY, type Ink, PENS } from '../kit/ink.ts';
import { CAP, LEADING } from '../kit/lettering/letters.ts';
import type { Pen } from '../kit/pen.ts';
import { drawSmallDelta } from '../kit/revision/delta.ts';
import { drawBranches, drawBreaker, drawGround } from './circuit-symbols.ts';
import {
  BRANCH,
  type LevelHeight,
  levelsOfPage,
  type OneLineSize,
  type OtherPieces,
  SPREAD,
  WORDS_OFF,
  type WordedNode,
} from './level-heights.ts';
import { drawOneLineSymbol } from './one-line-symbols.ts';
import type { OneLinePage, PlacedNode } from './one-line-tree.ts';
import { SYMBOL_HALF, SYMBOL_HEIGHT } from './symbol-pen.ts';

/** Draws one piece of a one-line in a room. */
export function drawOneLine(
  pen: Pen,
  room: Area,
  page: OneLinePage<WordedNode>,
  size: OneLineSize,
  others: OtherPieces,
): void {
  const { k, column } = size;
  const used = Math.max(...page.map((placed) => placed.column)) + 1;
  const start = room.x + Math.max(0, room.width - used * column) / 2 + k * SYMBOL_HALF + WORDS_OFF;
  const tops = topsOf(page, room, size);
  const xOf = (placed: PlacedNode<WordedNode>): number => start + placed.column * column;
  page.forEach((placed, place) => {
    const { node, level, isCut } = placed;
    const x = xOf(placed);
    const { feeder, equipment } = tops[level]!;
    const foot = equipment - k * SYMBOL_HEIGHT;
    if (placed.parent >= 0) drawFeeder(pen, node, x, feeder, equipment, size);
    else if (node.supply.feeder !== null) drawFromElsewhere(pen, node, x, [feeder, equipment], size, others);
    drawOneLineSymbol(pen, node.supply.equipment.kind, node.id, [x, equipment], k);
    const words = others.isRepeated(node)
      ? [node.equipment[0]!, `again, see ${others.firstSheet(node)}`]
      : node.equipment;
    const at: Point2 = [x + k * SYMBOL_HALF + WORDS_OFF, equipment];
    drawWords(pen, words, at, BLACK, size);
    if (node.deltas && !others.isRepeated(node))
      drawDeltas(pen, words, at, node.deltas.number, node.deltas.equipment, size);
    const fed = page.filter((other) => other.parent === place);
    const bus = tops[level + 1]?.feeder;
    if (fed.length > 0 && bus !== undefined) drawBus(pen, x, foot, bus, fed.map(xOf));
    if (isCut) drawGoesOn(pen, [x, foot], [...new Set(node.children.map(others.goesOn))].join(', '), size);
    if (node.isGrounded) drawGround(pen, [x - k * SYMBOL_HALF, equipment - (k * SYMBOL_HEIGHT) / 2], k);
    if (node.hasBranches) drawBranches(pen, fed.length > 0 || isCut ? [x - k * 24, foot + k * 9] : [x, foot], BRANCH);
  });
}

/** Where the feeders and the equipment of each level begin: down from the top, spread over what room there is. */
function topsOf(page: OneLinePage<WordedNode>, room: Area, size: OneLineSize): readonly LevelHeight[] {
  const heights = levelsOfPage(page, size);
  const levels = heights.length;
  const spare = room.height - heights.reduce((sum, { feeder, equipment }) => sum + feeder + equipment, 0);
  const spread = Math.min(SPREAD * size.letters, Math.max(0, spare) / (levels + 1));
  let y = top(room) - Math.max(0, spare - spread * levels) / 3;
  return heights.map((height) => {
    const feeder = y;
    const equipment = y - height.feeder - (height.feeder > 0 ? spread / 2 : 0);
    y = equipment - height.equipment - spread / 2;
    return { feeder, equipment };
  });
}

/** The feeder of what stands at the head of a piece, under the name of what feeds it on another; once with its words. */
function drawFromElsewhere(
  pen: Pen,
  node: WordedNode,
  x: number,
  [high, low]: readonly [number, number],
  size: OneLineSize,
  others: OtherPieces,
): void {
  const { from, id } = node.supply.feeder!;
  const label = size.letters * LEADING;
  pen.text(`${id} from ${from}`, [x - size.k * SYMBOL_HALF, high - size.letters], { size: size.letters });
  drawFeeder(pen, others.isRepeated(node) ? { ...node, feeder: [] } : node, x, high - label, low, size);
}

function drawFeeder(
  pen: Pen,
  { supply, feeder, devices, deltas }: WordedNode,
  x: number,
  high: number,
  low: number,
  size: OneLineSize,
): void {
  const isExisting = supply.feeder?.existing === true;
  const ink: Ink = isExisting ? { ...PENS.existing, weight: 0.35 } : PENS.heavy;
  pen.line(
    [
      [x, high],
      [x, low],
    ],
    ink,
  );
  const colour = isExisting ? GREY : BLACK;
  if (devices.head) drawBreaker(pen, [x, high - 14 * size.k], colour, size.k);
  if (devices.end) drawBreaker(pen, [x, low + 12 * size.k], colour, size.k);
  const at: Point2 = [x + 14 * size.k, high - 0.6 * size.letters];
  drawWords(pen, feeder, at, colour, size);
  if (deltas) drawDeltas(pen, feeder, at, deltas.number, deltas.feeder, size);
}

/** From the foot of what feeds down to a bus, and the bus over all that it feeds. */
function drawBus(pen: Pen, x: number, foot: number, bus: number, xs: readonly number[]): void {
  pen.line(
    [
      [x, foot],
      [x, bus],
    ],
    PENS.heavy,
  );
  const [left, right] = [Math.min(x, ...xs), Math.max(x, ...xs)];
  if (right - left > 0.5)
    pen.line(
      [
        [left, bus],
        [right, bus],
      ],
      PENS.border,
    );
}

/** Lines under one another from a height, the first in bold. */
function drawWords(pen: Pen, lines: readonly string[], [x, y]: Point2, colour: string, { letters }: OneLineSize): void {
  lines.forEach((line, i) => {
    const base = y - letters * CAP - i * letters * LEADING;
    pen.text(line, [x, base], { size: letters, colour, weight: i === 0 ? 'bold' : 'regular' });
  });
}

/** A delta after each line that a revision changed. */
function drawDeltas(
  pen: Pen,
  lines: readonly string[],
  [x, y]: Point2,
  number: string,
  changed: ReadonlySet<number>,
  { letters }: OneLineSize,
): void {
  lines.forEach((line, i) => {
    if (!changed.has(i)) return;
    const width = pen.lettering.width(line, letters, i === 0 ? 'bold' : 'regular');
    drawSmallDelta(pen, [x + width + 2, y - letters * CAP - i * letters * LEADING - 1], number);
  });
}

function drawGoesOn(pen: Pen, [x, y]: Point2, numbers: string, { letters }: OneLineSize): void {
  pen.line(
    [
      [x, y],
      [x, y - 8],
    ],
    PENS.heavy,
  );
  pen.text(`continued on ${numbers}`, [x, y - 10 - letters], { size: letters, anchor: 'middle' });
}
