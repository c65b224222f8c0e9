import { direction } from '../../routing/plane/direction.ts';
import { fromFeet, toFeet } from '../../routing/site/numbers/units.ts';
import type { Point2, Site } from '../../routing/site/site.ts';
import type { Plan } from '../plan/plan-shape.ts';
import { extentOf } from './drawing/extent.ts';
import { LAYERS } from './drawing/layers.ts';
import { type LetteredParts, letteredPlan } from './lettered/lettered-plan.ts';
import type { DimensionMark, Mark, TextMark } from './lettered/mark.ts';
import { BLACK, type Ink, PENS } from './pdf/kit/ink.ts';
import { CAP } from './pdf/kit/letters.ts';
import { barPart } from './pdf/kit/scale-bar.ts';
import { escaped, number, PER_MM, type Place, SCALE, svg } from './svg.ts';

/** Height of the band with the title, pixels. */
const BAND = 64;

/**
 * The plan as an SVG document, as the site file lies: with the words, dimensions and clouds where the drawing set has room
 * for them, each as wide as it is there, feeders, and over the plan its title, scale and north. With a revision it has
 * the clouds and deltas of the revised set.
 */
export async function planSvg(site: Site, plan: Plan, parts: LetteredParts): Promise<string> {
  const { drawing, marks } = await letteredPlan(site, plan, parts);
  const reach = extentOf([...drawing.items, ...marks.flatMap(reachOf)]);
  return svg({ ...drawing, extent: reach }, site, {
    band: BAND,
    head: (width) => headOf(site, parts, width),
    over: (px, py) => marks.map((mark) => drawn(mark, px, py)).join('\n'),
  });
}

/** Corners of what a mark takes, as a line of the drawing. */
function reachOf(mark: Mark) {
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

function drawn(mark: Mark, px: Place, py: Place): string {
  const path = (points: readonly Point2[]): string => points.map(([x, y]) => `${px(x)},${py(y)}`).join(' ');
  const id = mark.layer === null ? '' : ` class="${LAYERS[mark.layer].name}"`;
  switch (mark.kind) {
    case 'line':
      return `<${mark.closed ? 'polygon' : 'polyline'}${id} points="${path(mark.points)}" fill="none" ${stroke(mark.ink)}/>`;
    case 'fill':
      return `<polygon${id} points="${path(mark.points)}" fill="${mark.colour}"/>`;
    case 'circle':
      return `<circle${id} cx="${px(mark.at[0])}" cy="${py(mark.at[1])}" r="${number(mark.radius * SCALE)}" fill="${mark.fill ?? 'none'}"${mark.ink ? ` ${stroke(mark.ink)}` : ''}/>`;
    case 'text':
      return words(mark, id, px, py);
    case 'dimension':
      return dimension(mark, id, px, py);
  }
}

const stroke = ({ colour, weight, dash }: Ink): string =>
  `stroke="${colour}" stroke-width="${number(weight * PER_MM)}"${dash ? ` stroke-dasharray="${dash.map((mm) => number(mm * PER_MM)).join(' ')}"` : ''}`;

type Words = Pick<TextMark, 'words' | 'at' | 'width' | 'height' | 'turn'> &
  Partial<Pick<TextMark, 'weight' | 'colour'>>;

function words(
  { words: text, at, width, height, turn, weight, colour = BLACK }: Words,
  id: string,
  px: Place,
  py: Place,
): string {
  const [x, y] = [px(at[0]), py(at[1])];
  const turned = turn === 0 ? '' : ` transform="rotate(${number(-turn)} ${x} ${y})"`;
  const bold = weight === 'bold' ? ' font-weight="600"' : '';
  return `<text${id} x="${x}" y="${y}"${turned} textLength="${number(width * SCALE)}" lengthAdjust="spacingAndGlyphs" font-family="sans-serif" font-size="${number((height * SCALE) / CAP)}"${bold} fill="${colour}">${escaped(text)}</text>`;
}

function dimension(
  { from, to, fromOrigin, toOrigin, turn, figure, tick, past }: DimensionMark,
  id: string,
  px: Place,
  py: Place,
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
    ...(figure ? [words(figure, id, px, py)] : []),
  ].join('\n');
}

/** The title, a scale bar and north, over the plan. */
function headOf({ name, units, georef }: Site, { date, revision }: LetteredParts, width: number): string {
  const text = (words: string, x: number, y: number, size: number, more = ''): string =>
    `<text x="${number(x)}" y="${number(y)}" font-family="sans-serif" font-size="${size}" fill="${BLACK}"${more}>${escaped(words)}</text>`;
  const revised = revision ? `Revision ${revision.number} of ${revision.since}. ` : '';
  const part = barPart(SCALE, units);
  const step = toFeet(part, units) * SCALE;
  const [left, top] = [Math.max(16, width - 4 * step - 130), 34];
  const bar = [0, 1, 2, 3].map(
    (i) =>
      `<rect x="${number(left + i * step)}" y="${top}" width="${number(step)}" height="6" fill="${i % 2 === 0 ? BLACK : '#ffffff'}" stroke="${BLACK}"/>`,
  );
  const figures = [0, 2, 4].map((i) =>
    text(
      `${Number((i * part).toPrecision(6))}${i === 4 ? ` ${units}` : ''}`,
      left + i * step,
      top - 4,
      11,
      ' text-anchor="middle"',
    ),
  );
  const scale = `Scale ${number(SCALE / fromFeet(1, units))} px = 1 ${units}`;
  return [
    `<g id="title">`,
    text(name, 16, 26, 20, ' font-weight="600"'),
    text(`${revised}Raceway and drop plan. ${scale}. ${date}`, 16, 46, 12),
    ...bar,
    ...figures,
    northOf(georef, width - 40),
    '</g>',
  ].join('\n');
}

function northOf(georef: Site['georef'], x: number): string {
  const y = 32;
  const letter = (words: string, at: Point2): string =>
    `<text x="${number(at[0])}" y="${number(at[1])}" text-anchor="middle" font-family="sans-serif" font-size="11" fill="${BLACK}">${words}</text>`;
  if (!georef) return letter('North not given', [x - 20, y + 26]);
  // +y, which is up, lies `bearing` degrees clockwise of north.
  const [ux, uy] = direction(90 + georef.bearing);
  const at = (along: number, left: number): Point2 => [x + along * ux - left * uy, y - along * uy - left * ux];
  const points = [at(18, 0), at(-12, 7), at(-6, 0), at(-12, -7)].map((p) => p.map(number).join(',')).join(' ');
  const [nx, ny] = at(26, 0);
  return `<polygon id="north" points="${points}" fill="${BLACK}"/>${letter('N', [nx, ny + 4])}`;
}
