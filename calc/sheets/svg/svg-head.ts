import { direction } from '../../../routing/plane/direction.ts';
import { fromFeet, toFeet } from '../../../routing/site/numbers/units.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { BLACK } from '../pdf/kit/ink.ts';
import { barPart } from '../pdf/kit/view/scale-bar.ts';
import { escaped, SCALE, svgNumber } from './svg.ts';

/** Height of the band with the title, pixels. */
export const BAND = 64;

/** The title of a drawing and what it is, a scale bar and north, for the band over it. */
export function svgHead({ name, units, georef }: Site, says: string, date: string, width: number): string {
  const text = (words: string, x: number, y: number, size: number, more = ''): string =>
    `<text x="${svgNumber(x)}" y="${svgNumber(y)}" font-family="sans-serif" font-size="${size}" fill="${BLACK}"${more}>${escaped(words)}</text>`;
  const part = barPart(SCALE, units);
  const step = toFeet(part, units) * SCALE;
  const [left, top] = [Math.max(16, width - 4 * step - 130), 34];
  const bar = [0, 1, 2, 3].map(
    (i) =>
      `<rect x="${svgNumber(left + i * step)}" y="${top}" width="${svgNumber(step)}" height="6" fill="${i % 2 === 0 ? BLACK : '#ffffff'}" stroke="${BLACK}"/>`,
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
  const scale = `Scale ${svgNumber(SCALE / fromFeet(1, units))} px = 1 ${units}`;
  return [
    `<g id="title">`,
    text(name, 16, 26, 20, ' font-weight="600"'),
    text(`${says} ${scale}. ${date}`, 16, 46, 12),
    ...bar,
    ...figures,
    northOf(georef, width - 40),
    '</g>',
  ].join('\n');
}

function northOf(georef: Site['georef'], x: number): string {
  const y = 32;
  const letter = (words: string, at: Point2): string =>
    `<text x="${svgNumber(at[0])}" y="${svgNumber(at[1])}" text-anchor="middle" font-family="sans-serif" font-size="11" fill="${BLACK}">${words}</text>`;
  if (!georef) return letter('North not given', [x - 20, y + 26]);
  // +y, which is up, lies `bearing` degrees clockwise of north.
  const [ux, uy] = direction(90 + georef.bearing);
  const at = (along: number, left: number): Point2 => [x + along * ux - left * uy, y - along * uy - left * ux];
  const points = [at(18, 0), at(-12, 7), at(-6, 0), at(-12, -7)].map((p) => p.map(svgNumber).join(',')).join(' ');
  const [nx, ny] = at(26, 0);
  return `<polygon id="north" points="${points}" fill="${BLACK}"/>${letter('N', [nx, ny + 4])}`;
}
