import { placeRdf } from '../../../routing/site/place/stated-place.ts';
import type { Site } from '../../../routing/site/site.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Drawing, DrawnItem } from '../drawing/drawing.ts';
import { LAYERS, type LayerName } from '../drawing/layers.ts';
import { SYMBOLS } from '../drawing/symbols.ts';

/** Pixels a foot, and the margin round the drawing, feet. */
export const SCALE = 8;
const MARGIN = 6;
/** Pixels a millimetre of line weight. */
export const PER_MM = 96 / 25.4;

/** Width that a band with a title has at least, pixels. */
const LEAST = 720;

/** Width that is reckoned for a letter of the cautions, and from one of their lines to the next, pixels. */
const CAUTION_LETTER = 6;
const CAUTION_LEADING = 15;

/** What stands on a drawing beside what it draws, as markup. */
export interface SvgMore {
  /** Over everything; where a point of the drawing lies is handed in. */
  readonly over?: (px: SvgNumber, py: SvgNumber) => string;
  /** In a band over the drawing, from its upper left corner, and how wide the document is. */
  readonly head: (width: number) => string;
  /** Height of that band, pixels. */
  readonly band: number;
}

/**
 * A drawing as an SVG 1.1 document: a group a layer, real text, y turned to run down as SVG has it, one user unit a
 * pixel at 8 px a foot. Its metadata say where it lies on the site, and the site on the ground. Names cannot bring markup
 * in.
 */
export function svg(drawing: Drawing, { georef }: Pick<Site, 'georef'> = {}, more?: SvgMore): string {
  const { minX, minY, maxX, maxY } = drawing.extent ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const band = more?.band ?? 0;
  const px = (x: number): string => svgNumber((x - minX + MARGIN) * SCALE);
  const py = (y: number): string => svgNumber((maxY - y + MARGIN) * SCALE + band);
  const width = Math.max(more ? LEAST : 0, (maxX - minX + 2 * MARGIN) * SCALE);
  const height = (maxY - minY + 2 * MARGIN) * SCALE + band;
  const cautions = lines(CAUTIONS, (width - 2 * MARGIN * SCALE) / CAUTION_LETTER);
  const foot = 25 + cautions.length * CAUTION_LEADING;
  const groups = (Object.keys(LAYERS) as LayerName[]).map((layer) => {
    const items = drawing.items.filter((item) => item.layer === layer);
    return items.length === 0 ? '' : group(layer, items.map((item) => drawn(item, px, py)).join('\n'));
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${svgNumber(width)}" height="${svgNumber(height + foot)}" viewBox="0 0 ${svgNumber(width)} ${svgNumber(height + foot)}">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<desc>${escaped(CAUTIONS)}</desc>`,
    `<metadata>${placeRdf({ feetPerUnit: 1 / SCALE, origin: [(MARGIN - minX) * SCALE, (maxY + MARGIN) * SCALE + band], turned: 0, ...(georef && { georef }) })}</metadata>`,
    `<rect width="100%" height="100%" fill="#ffffff"/>`,
    ...groups.filter(Boolean),
    ...(more ? [more.over?.(px, py) ?? '', more.head(width)] : []),
    ...cautions.map(
      (words, i) =>
        `<text x="${MARGIN * SCALE}" y="${svgNumber(height + 16 + i * CAUTION_LEADING)}" font-family="sans-serif" font-size="11" fill="#20242c">${escaped(words)}</text>`,
    ),
    '</svg>',
    '',
  ].join('\n');
}

/** A text in lines of so many letters, parted between words. */
function lines(text: string, most: number): readonly string[] {
  const all: string[] = [];
  for (const word of text.split(' ')) {
    const last = all.at(-1);
    if (last !== undefined && last.length + word.length < most) all[all.length - 1] = `${last} ${word}`;
    else all.push(word);
  }
  return all;
}

function group(layer: LayerName, inside: string): string {
  const { name, colour, weight, dash } = { dash: undefined, ...LAYERS[layer] };
  const dashes = dash ? ` stroke-dasharray="${dash.map((mm) => svgNumber(mm * PER_MM)).join(' ')}"` : '';
  return `<g id="${name}" fill="none" stroke="${colour}" stroke-width="${svgNumber(weight * PER_MM)}"${dashes}>\n${inside}\n</g>`;
}

export type SvgNumber = (value: number) => string;

function drawn(item: DrawnItem, px: SvgNumber, py: SvgNumber): string {
  switch (item.kind) {
    case 'line': {
      const points = item.points.map(([x, y]) => `${px(x)},${py(y)}`).join(' ');
      return `<${item.closed ? 'polygon' : 'polyline'} points="${points}"/>`;
    }
    case 'circle':
      return `<circle cx="${px(item.at[0])}" cy="${py(item.at[1])}" r="${svgNumber(item.radius * SCALE)}"/>`;
    case 'text': {
      const anchor = { left: 'start', middle: 'middle', right: 'end' }[item.anchor];
      const [x, y] = [px(item.at[0]), py(item.at[1])];
      const turn = item.turn === 0 ? '' : ` transform="rotate(${svgNumber(-item.turn)} ${x} ${y})"`;
      // Capitals stand about 0.72 of the font's size. White round them parts the lines that they stand on.
      const size = svgNumber((item.height * SCALE) / 0.72);
      const fill = LAYERS[item.layer].colour;
      return `<text x="${x}" y="${y}"${turn} text-anchor="${anchor}" font-family="sans-serif" font-size="${size}" fill="${fill}" stroke="#ffffff" stroke-width="${svgNumber(item.height * SCALE * 0.3)}" stroke-linejoin="round" stroke-dasharray="none" paint-order="stroke">${escaped(item.text)}</text>`;
    }
    case 'symbol': {
      const { circles, lines } = SYMBOLS[item.symbol];
      const inside = [
        ...circles.map(
          ({ radius, filled }) =>
            `<circle r="${svgNumber(radius * SCALE)}"${filled ? ` fill="${LAYERS[item.layer].colour}"` : ''}/>`,
        ),
        ...lines.map(
          ({ points, closed }) =>
            `<${closed ? 'polygon' : 'polyline'} points="${points.map(([x, y]) => `${svgNumber(x * SCALE)},${svgNumber(-y * SCALE)}`).join(' ')}"/>`,
        ),
      ];
      return `<g transform="translate(${px(item.at[0])} ${py(item.at[1])})">${inside.join('')}</g>`;
    }
  }
}

export const svgNumber = (value: number): string => String(Math.round(value * 1000) / 1000);

/** Text that is only text in XML: markup escaped, characters that XML 1.0 forbids left out. */
export const escaped = (text: string): string =>
  text
    .replace(/[^\P{Cc}\t\n\r]|[\p{Cs}\ufffe\uffff]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
