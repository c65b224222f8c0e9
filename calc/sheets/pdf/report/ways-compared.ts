import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { FIGURE_NAMES, FIGURES, type WayFigure } from '../../../study/figures.ts';
import type { Study, StudyWay } from '../../../study/shape.ts';
import { shownFigure } from '../../../study/shown-figure.ts';
import { marksUpTo } from '../../../words/axis-marks.ts';
import { type Area, right, top } from '../kit/area.ts';
import { BLACK, GREY, PENS, WHITE } from '../kit/ink.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { LYING, type ReportPage } from './report.ts';

/** Ways side by side on a page. */
const ACROSS = 8;
/** Width of the names of the figures, and height of a row, points. */
const NAMES = 148;
const ROW = 15;
const MOST_LINES = 7;

const isKnown = (value: number | null): value is number => value !== null && Number.isFinite(value);

/** Price against what cars get, and then every figure of every way side by side. */
export function comparedPages(study: Study): readonly ReportPage[] {
  const { ways } = study;
  if (ways.length === 0) return [];
  const best = bestOf(ways);
  const pages = Math.ceil(ways.length / ACROSS);
  return [
    { title: 'Price against what cars get', draw: (pen) => drawScatters(pen, study) },
    ...Array.from({ length: pages }, (_, i): ReportPage => {
      const own = ways.slice(i * ACROSS, (i + 1) * ACROSS);
      return {
        title: `Figures of ${own[0]!.id} to ${own.at(-1)!.id}`,
        draw: (pen) => drawFigures(pen, own, study.unbeaten, best),
      };
    }),
  ];
}

/** The best value that any way has of each figure; none where all are alike. */
function bestOf(ways: readonly StudyWay[]): ReadonlyMap<WayFigure, number> {
  const best = new Map<WayFigure, number>();
  for (const name of FIGURE_NAMES) {
    const values = ways.map(({ figures }) => figures[name]).filter(isKnown);
    if (values.length === 0) continue;
    const [least, most] = [Math.min(...values), Math.max(...values)];
    if (least < most) best.set(name, FIGURES[name].better === 'more' ? most : least);
  }
  return best;
}

function drawFigures(
  pen: Pen,
  ways: readonly StudyWay[],
  unbeaten: ReadonlySet<string>,
  best: ReadonlyMap<WayFigure, number>,
): void {
  const { field } = LYING;
  const { small, note } = pen.lettering.sizes;
  const wide = (field.width - NAMES) / ACROSS;
  const edge = (k: number): number => field.x + NAMES + (k + 1) * wide;
  const units: Units = ways[0]!.file.units;
  const heads = ways.map(({ name }) => wrapped(name, wide - 8, small, pen.lettering, { most: MOST_LINES }));
  const lines = Math.max(...heads.map(({ length }) => length));
  for (const [k, { id }] of ways.entries()) {
    const left = edge(k) - wide + 8;
    pen.text(unbeaten.has(id) ? `${id} *` : id, [left, top(field) - note], { size: note, weight: 'bold' });
    for (const [i, line] of heads[k]!.entries())
      pen.text(line, [left, top(field) - note - (i + 1) * small * LEADING], { size: small });
  }
  let y = top(field) - note - lines * small * LEADING - 6;
  const rule = (at: number): void =>
    pen.line(
      [
        [field.x, at],
        [edge(ways.length - 1), at],
      ],
      PENS.hair,
    );
  rule(y);
  for (const name of FIGURE_NAMES) {
    y -= ROW;
    pen.text(FIGURES[name].name, [field.x, y + 4], { size: small, colour: GREY });
    for (const [k, { figures }] of ways.entries())
      pen.text(shownFigure(name, figures[name], units), [edge(k), y + 4], {
        size: small,
        anchor: 'right',
        weight: isKnown(figures[name]) && figures[name] === best.get(name) ? 'bold' : 'regular',
      });
    rule(y);
  }
  const key = '* nothing beats it on all counts. Bold: the best of all ways by that count, where they differ.';
  pen.text(key, [field.x, y - note - 4], { size: small });
}

/** Room around a picture for its figures and words, points. */
const EDGE = { left: 40, right: 12, top: 20, bottom: 32 } as const;
const DOT = 2.6;

/** The picture by what a car gets and, where they differ by it, the one by chargers at full rate. */
function drawScatters(pen: Pen, study: Study): void {
  const { field } = LYING;
  const { small } = pen.lettering.sizes;
  const isTold = (up: WayFigure): boolean => study.ways.some(({ figures }) => isKnown(figures[up]));
  const ups = (['energy', 'fullRate'] as const).filter(isTold);
  const high = (field.height - 2 * small * LEADING) / Math.max(1, ups.length);
  for (const [i, up] of ups.entries())
    drawScatter(pen, study, up, { ...field, y: top(field) - (i + 1) * high, height: high });
  pen.text('Filled: nothing beats it on all counts.', [field.x, field.y], { size: small });
}

function drawScatter(pen: Pen, { ways, unbeaten }: Study, up: 'energy' | 'fullRate', area: Area): void {
  const { small, note } = pen.lettering.sizes;
  const plot: Area = {
    x: area.x + EDGE.left,
    y: area.y + EDGE.bottom,
    width: area.width - EDGE.left - EDGE.right,
    height: area.height - EDGE.top - EDGE.bottom,
  };
  const dots = ways.flatMap(({ id, figures }) =>
    isKnown(figures.price) && isKnown(figures[up]) ? [{ id, price: figures.price, gets: figures[up] }] : [],
  );
  // Names stand above the dots, so that a fifth of the height is theirs.
  const most = {
    price: Math.max(1, ...dots.map(({ price }) => price)) * 1.05,
    gets: Math.max(1, ...dots.map(({ gets }) => gets)) * 1.25,
  };
  const x = (price: number): number => plot.x + (plot.width * price) / most.price;
  const y = (gets: number): number => plot.y + (plot.height * gets) / most.gets;
  const { name, unit } = FIGURES[up];
  pen.text(`Up: ${name}${unit === 'kWh' ? ', kWh' : ''}. Across: price.`, [area.x, top(area) - note], {
    size: note,
    weight: 'bold',
  });
  for (const value of marksUpTo(most.gets)) {
    pen.line(
      [
        [plot.x, y(value)],
        [right(plot), y(value)],
      ],
      PENS.existingHair,
    );
    pen.text(String(value), [plot.x - 5, y(value) - 0.3 * small], { size: small, anchor: 'right' });
  }
  for (const value of marksUpTo(most.price)) {
    pen.line(
      [
        [x(value), plot.y],
        [x(value), plot.y - 3],
      ],
      PENS.thin,
    );
    pen.text(`$${value.toLocaleString('en-US')}`, [x(value), plot.y - 5 - small], { size: small, anchor: 'middle' });
  }
  pen.line(
    [
      [plot.x, top(plot)],
      [plot.x, plot.y],
      [right(plot), plot.y],
    ],
    PENS.thin,
  );
  const placed = dots.map(({ id, price, gets }) => ({ id, at: [x(price), y(gets)] as Point2 }));
  for (const { at, label, id } of namesBeside(placed, small)) {
    if (Math.abs(label[1] - at[1]) > 2 * small) pen.line([at, [label[0], label[1] - 1]], PENS.existingHair);
    pen.text(id, label, { size: small, anchor: 'middle' });
  }
  for (const { id, at } of placed) pen.circle(at, DOT, PENS.plain, unbeaten.has(id) ? BLACK : WHITE);
}

interface Named {
  readonly id: string;
  readonly at: Point2;
  /** Middle of the base line of its name. */
  readonly label: Point2;
}

/**
 * A place for the name of each dot, over it or under it, as near as it is free of other names and of dots. Points.
 * @param size of the letters
 */
export function namesBeside(
  dots: readonly { readonly id: string; readonly at: Point2 }[],
  size: number,
): readonly Named[] {
  const taken: (readonly [number, number])[] = [];
  const isFree = ([lx, ly]: Point2, half: number): boolean =>
    taken.every(([x, y]) => Math.abs(x - lx) >= 2 * half || Math.abs(y - ly) >= 1.1 * size) &&
    dots.every(({ at: [x, y] }) => Math.abs(x - lx) >= half + DOT || y < ly - DOT - 1 || y > ly + size + DOT);
  const named: Named[] = [];
  for (const { id, at } of dots.toSorted((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1])) {
    const half = 0.34 * size * id.length;
    const tries = Array.from({ length: dots.length + 1 }, (_, i) => [
      [at[0], at[1] + DOT + 3 + i * 1.15 * size] as const,
      [at[0], at[1] - DOT - 3 - size - i * 1.15 * size] as const,
    ]).flat();
    const label = tries.find((one) => isFree(one, half)) ?? tries[0]!;
    taken.push(label);
    named.push({ id, at, label });
  }
  return named;
}
