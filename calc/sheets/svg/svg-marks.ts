import { direction } from '../../../routing/plane/direction.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { extentOf } from '../drawing/extent.ts';
import { LAYERS } from '../drawing/layers.ts';
import type { DimensionMark, SheetMark, TextMark } from '../lettered/mark.ts';
import { roundWords } from '../lettered/round-words.ts';
import { BLACK, type Ink, PENS } from '../pdf/kit/ink.ts';
import { CAP } from '../pdf/kit/lettering/letters.ts';
import { escaped, PER_MM, SCALE, type SvgMore, type SvgNumber, svgNumber } from './svg.ts';

/** A drawing with room for the marks that lie over it. */
export const withMarks = (drawing: Drawing, marks: readonly SheetMark[]): Drawing => ({
  ...drawing,
  extent: extentOf([...drawing.items, ...marks.flatMap(reachOf)]),
});

/** Marks over a drawing, feet, as markup. */
export const marksOver =
  (marks: readonly SheetMark[]): NonNullable<SvgMore['over']> =>
  (px, py) =>
    marks.map((mark) => drawn(mark, px, py)).join('\n');

/** Corners of what a mark takes, as a line of the drawing. */
function reachOf(mark: SheetMark) {
  const points: readonly Point2[] =
    mark.kind === 'line' || mark.kind === 'fill'
      ? mark.points
      : mark.kind === 'dimension'
        ? [mark.from, mark.to]
        : mark.kind === 'circle'
          ? [mark.at]
          : [mark.at, endOf(mark)];
  return [{ kind: 'line', layer: 'notes', points, closed: false } as const];
}

function endOf({ at, width, turn }: TextMark): Point2 {
  const [ux, uy] = direction(turn);
  return [at[0] + width * ux, at[1] + width * uy];
}

function drawn(mark: SheetMark, px: SvgNumber, py: SvgNumber): string {
  const path = (points: readonly Point2[]): string => points.map(([x, y]) => `${px(x)},${py(y)}`).join(' ');
  const id = mark.layer === null ? '' : ` class="${LAYERS[mark.layer].name}"`;
  switch (mark.kind) {
    case 'line':
      return `<${mark.closed ? 'polygon' : 'polyline'}${id} points="${path(mark.points)}" fill="none" ${stroke(mark.ink)}/>`;
    case 'fill':
      return `<polygon${id} points="${path(mark.points)}" fill="${mark.colour}"/>`;
    case 'circle':
      return `<circle${id} cx="${px(mark.at[0])}" cy="${py(mark.at[1])}" r="${svgNumber(mark.radius * SCALE)}" fill="${mark.fill ?? 'none'}"${mark.ink ? ` ${stroke(mark.ink)}` : ''}/>`;
    case 'text':
      return words(mark, id, px, py);
    case 'dimension':
      return dimension(mark, id, px, py);
  }
}

const stroke = ({ colour, weight, dash }: Ink): string =>
  `stroke="${colour}" stroke-width="${svgNumber(weight * PER_MM)}"${dash ? ` stroke-dasharray="${dash.map((mm) => svgNumber(mm * PER_MM)).join(' ')}"` : ''}`;

type Words = Pick<TextMark, 'words' | 'at' | 'width' | 'height' | 'turn'> &
  Partial<Pick<TextMark, 'weight' | 'colour'>>;

function words(
  { words: text, at, width, height, turn, weight, colour = BLACK }: Words,
  id: string,
  px: SvgNumber,
  py: SvgNumber,
): string {
  const [x, y] = [px(at[0]), py(at[1])];
  const turned = turn === 0 ? '' : ` transform="rotate(${svgNumber(-turn)} ${x} ${y})"`;
  const bold = weight === 'bold' ? ' font-weight="600"' : '';
  return `<text${id} x="${x}" y="${y}"${turned} textLength="${svgNumber(width * SCALE)}" lengthAdjust="spacingAndGlyphs" font-family="sans-serif" font-size="${svgNumber((height * SCALE) / CAP)}"${bold} fill="${colour}">${escaped(text)}</text>`;
}

/** White under a figure of a dimension, so that no line goes through it. */
const under = (figure: Words, px: SvgNumber, py: SvgNumber): string =>
  `<polygon points="${roundWords(figure, 0.15 * figure.height)
    .map(([x, y]) => `${px(x)},${py(y)}`)
    .join(' ')}" fill="#ffffff"/>`;

function dimension(
  { from, to, fromOrigin, toOrigin, turn, figure, tick, past }: DimensionMark,
  id: string,
  px: SvgNumber,
  py: SvgNumber,
): string {
  const [ux, uy] = direction(turn);
  const [tx, ty] = direction(turn + 45);
  const line = (a: Point2, b: Point2, ink: Ink): string =>
    `<polyline${id} points="${px(a[0])},${py(a[1])} ${px(b[0])},${py(b[1])}" fill="none" ${stroke(ink)}/>`;
  return [
    line([from[0] - past * ux, from[1] - past * uy], [to[0] + past * ux, to[1] + past * uy], PENS.hair),
    ...[
      [from, fromOrigin],
      [to, toOrigin],
    ].flatMap(([end, origin]) => {
      const [x, y] = end as Point2;
      const across = line([x - tick * tx, y - tick * ty], [x + tick * tx, y + tick * ty], PENS.medium);
      return Math.hypot(x - origin![0], y - origin![1]) < 1e-9 ? [across] : [across, line(origin!, end!, PENS.hair)];
    }),
    ...(figure ? [under(figure, px, py), words(figure, id, px, py)] : []),
  ].join('\n');
}
