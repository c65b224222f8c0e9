import { addTo } from '../../../../routing/lists/grouping.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { DetailDimension } from '../../details/detail.ts';
import { PENS, WHITE } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { CAP } from '../kit/lettering/letters.ts';
import type { Pen } from '../kit/pen.ts';

/** Points: from the drawing to the first line of dimensions, and from one to the next. */
const FIRST = 12;
const NEXT = 7;
const TICK = 2.5;
const OVERSHOOT = 3.5;
/** White round a figure. */
const CLEAR = 2;

/** A figure of a dimension: between its marks, or outward of them where they are too near to one another. */
interface Figure {
  readonly text: string;
  readonly width: number;
  /** Middle of its marks along the line, and of the letters; points from the drawing's origin. */
  readonly middle: number;
  readonly stands: number;
  readonly inside: boolean;
}

/** A line of dimensions as it stands on the sheet, points from the drawing's origin. */
export interface DimensionLine {
  readonly of: DetailDimension;
  /** Points along the line, one for each mark. */
  readonly on: readonly number[];
  readonly from: readonly number[];
  /** Points outward from the edge of the drawing. */
  readonly off: number;
  readonly figures: readonly Figure[];
}

export interface DimensionsOfSide {
  readonly lines: readonly DimensionLine[];
  /** Points that all of them take outward. */
  readonly room: number;
}

/** The dimensions of one side of a drawing at a scale, from the edge outward. */
export function layDimensions(
  all: readonly DetailDimension[],
  side: DetailDimension['side'],
  perFoot: number,
  units: Units,
  lettering: Lettering,
): DimensionsOfSide {
  const size = lettering.sizes.small;
  const cap = size * CAP;
  const levels = new Map<number, DetailDimension[]>();
  for (const one of all) if (one.side === side) addTo(levels, one.level, one);
  const lines: DimensionLine[] = [];
  let room = 0;
  for (const level of [...levels.keys()].sort((a, b) => a - b)) {
    const own = levels.get(level)!;
    // Figures of lines under a drawing stand between it and the line.
    const off = room + (room === 0 ? FIRST : NEXT) + (side === 'bottom' ? cap + 2 : 0);
    let outward = side === 'bottom' ? OVERSHOOT : cap + 3;
    for (const of of own) {
      const on = of.marks.map(({ at }) => at * perFoot);
      const figures = figuresOf(of, on, units, lettering);
      const longest = Math.max(0, ...figures.filter(({ inside }) => !inside).map(({ width }) => width));
      if (longest > 0) outward = Math.max(outward, outwardFrom(cap) + longest + 1);
      lines.push({ of, on, from: of.marks.map(({ from }) => from * perFoot), off, figures });
    }
    room = off + outward;
  }
  return { lines, room };
}

/** Letters that do not go between their marks begin so far outward of the line. */
const outwardFrom = (cap: number): number => cap + 7;

/** A length as a detail has it: under a foot in inches alone. */
export const figureWords = (feet: number, units: Units): string => printLength(feet, units).replace(/^0' (?=.*")/, '');

function figuresOf(
  { marks }: DetailDimension,
  on: readonly number[],
  units: Units,
  lettering: Lettering,
): readonly Figure[] {
  const size = lettering.sizes.small;
  const figures = marks.slice(1).map((mark, i): Figure => {
    const text = figureWords(Math.abs(mark.at - marks[i]!.at), units);
    const width = lettering.width(text, size);
    const middle = (on[i]! + on[i + 1]!) / 2;
    return { text, width, middle, stands: middle, inside: Math.abs(on[i + 1]! - on[i]!) >= width + 2 * CLEAR + 2 };
  });
  const outside = figures.filter(({ inside }) => !inside);
  const places = spreadApart(
    outside.map(({ middle }) => middle),
    size * CAP + 4,
  );
  return figures.map((one) => (one.inside ? one : { ...one, stands: places[outside.indexOf(one)]! }));
}

/** Places in rising order moved apart to a distance, as little as may be. */
export function spreadApart(wished: readonly number[], apart: number): readonly number[] {
  const groups: { places: number[]; sum: number }[] = [];
  for (const place of wished) {
    groups.push({ places: [place], sum: place });
    for (;;) {
      const [a, b] = [groups.at(-2), groups.at(-1)!];
      if (a === undefined || startOf(b, apart) - endOf(a, apart) >= apart) break;
      groups.splice(-2, 2, { places: [...a.places, ...b.places], sum: a.sum + b.sum });
    }
  }
  return groups.flatMap((group) => group.places.map((_, i) => startOf(group, apart) + i * apart));
}

type Group = { readonly places: readonly number[]; readonly sum: number };
const startOf = ({ places, sum }: Group, apart: number): number =>
  sum / places.length - ((places.length - 1) * apart) / 2;
const endOf = (group: Group, apart: number): number => startOf(group, apart) + (group.places.length - 1) * apart;

/** Draws the dimensions of a side. `origin` is where the drawing's feet begin on the sheet, `edge` its edge on that side. */
export function drawDetailDimensions(
  pen: Pen,
  { lines }: DimensionsOfSide,
  origin: Point2,
  edge: number,
  perFoot: number,
): void {
  const size = pen.lettering.sizes.small;
  const cap = size * CAP;
  for (const { of, on, from, off, figures } of lines) {
    const upright = of.side === 'left';
    const outward = of.side === 'top' ? 1 : -1;
    const own = of.edge === undefined ? edge : (upright ? origin[0] : origin[1]) + of.edge * perFoot;
    const line = own + outward * off;
    const place = (along: number, across: number): Point2 =>
      upright ? [across, origin[1] + along] : [origin[0] + along, across];
    const strokes: (readonly Point2[])[] = on.map((along, i) => [
      place(along, (upright ? origin[0] : origin[1]) + from[i]! + outward * 2),
      place(along, line + outward * OVERSHOOT),
    ]);
    strokes.push([place(Math.min(...on) - OVERSHOOT, line), place(Math.max(...on) + OVERSHOOT, line)]);
    pen.lines(strokes, PENS.hair);
    const lean = upright ? -1 : 1;
    pen.lines(
      on.map((along) => {
        const [x, y] = place(along, line);
        return [
          [x - lean * TICK, y - TICK],
          [x + lean * TICK, y + TICK],
        ] as const;
      }),
      PENS.medium,
    );
    for (const { text, width, middle, stands, inside } of figures) {
      if (inside) {
        const over = line + (upright ? -CLEAR : CLEAR);
        const [x, y] = place(stands, over);
        clear(pen, upright ? [x - cap, y - width / 2, cap, width] : [x - width / 2, y, width, cap]);
        pen.text(text, [x, y], { size, anchor: 'middle', turn: upright ? 90 : 0 });
        continue;
      }
      const start = line + outward * outwardFrom(cap);
      pen.line([place(middle, line), place(stands, start - outward * 2)], PENS.hair);
      const [x, y] = place(stands, start);
      if (upright) {
        clear(pen, [x - width, y - cap / 2, width, cap]);
        pen.text(text, [x, y - cap / 2], { size, anchor: 'right' });
      } else {
        const foot = outward > 0 ? y : y - width;
        clear(pen, [x - cap / 2, foot, cap, width]);
        pen.text(text, [x + cap / 2, foot], { size, turn: 90 });
      }
    }
  }
}

function clear(pen: Pen, [x, y, width, height]: readonly [number, number, number, number]): void {
  pen.fillArea({ x: x - 1, y: y - 0.7, width: width + 2, height: height + 1.4 }, WHITE);
}
