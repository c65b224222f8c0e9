/** The size that an SVG gives itself, in its own user units of 1/96 in., and whether those are true inches. */
export interface SvgSize {
  readonly width: number;
  readonly height: number;
  /** Width and height are lengths on paper: inches, millimetres, points. */
  readonly onPaper: boolean;
}

/** Pixels of CSS in a unit (CSS values 4, absolute lengths). */
const PIXELS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
};

/**
 * What the root of an SVG says of its size: width and height, else those of its viewBox; null where it says nothing, so
 * that its drawing alone tells.
 */
export function svgSize(text: string): SvgSize | null {
  const root = rootOf(text);
  const said = (name: string): string | undefined => saidBy(root, name);
  const length = (text: string | undefined): { readonly pixels: number; readonly unit: string } | null => {
    const [, number, unit = ''] = /^\s*\+?(\d*\.?\d+(?:e[-+]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '') ?? [];
    const scale = PIXELS[unit.toLowerCase()];
    const pixels = Number(number) * (scale ?? Number.NaN);
    return pixels > 0 ? { pixels, unit: unit.toLowerCase() } : null;
  };
  const [width, height] = [length(said('width')), length(said('height'))];
  const [, , across, down] = viewBoxOf(text) ?? [];
  const onPaper = [width, height].some((side) => side !== null && side.unit !== '' && side.unit !== 'px');
  if (width && height) return { width: width.pixels, height: height.pixels, onPaper };
  if (across === undefined || down === undefined) return null;
  if (width) return { width: width.pixels, height: (width.pixels * down) / across, onPaper };
  if (height) return { width: (height.pixels * across) / down, height: height.pixels, onPaper };
  return { width: across, height: down, onPaper: false };
}

/** No root says more of itself than so many letters. */
const MOST_ROOT = 65_536;
const ROOT = /<(?:[\w.-]+:)?svg\b/i;
const REST_OF_TAG = /^(?:[^>"']|"[^"]*"|'[^']*')*>/;

/** The first tag of the root with what it says; nothing where it has no end. Each letter is looked at once. */
function rootOf(text: string): string {
  const at = ROOT.exec(text);
  if (!at) return '';
  const from = at.index + at[0].length;
  const rest = REST_OF_TAG.exec(text.slice(from, from + MOST_ROOT))?.[0];
  return rest === undefined ? '' : at[0] + rest;
}

function saidBy(root: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(root);
  return found?.[1] ?? found?.[2];
}

/** The part of its own axes that an SVG shows; null where its root does not say. */
export function viewBoxOf(text: string): readonly [left: number, top: number, across: number, down: number] | null {
  const box = (saidBy(rootOf(text), 'viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [left, top, across, down] = box;
  return box.length === 4 && box.every(Number.isFinite) && across! > 0 && down! > 0
    ? [left!, top!, across!, down!]
    : null;
}

/** The text of an SVG with a size of its own given to its root, over whatever it says. */
export function sizedSvg(text: string, width: number, height: number): string {
  const at = ROOT.exec(text);
  if (!at) return text;
  const from = at.index + at[0].length;
  const end = REST_OF_TAG.exec(text.slice(from, from + MOST_ROOT))?.[0] ?? '';
  const kept = end.replace(/\s(width|height)\s*=\s*("[^"]*"|'[^']*')/g, '');
  return `${text.slice(0, from)} width="${width}" height="${height}"${kept}${text.slice(from + end.length)}`;
}

/** What a picture as an image cannot show of an SVG, in few words; null where it shows all. */
export function svgLeftOut(text: string): string | null {
  // A tag is looked at up to the next: without its end it is gone through once.
  const pictures = [...text.matchAll(/<(?:[\w.-]+:)?image\b[^<>]*/g)].filter(([tag]) =>
    /\s(?:xlink:)?href\s*=\s*["'](?!data:)/.test(tag),
  ).length;
  const foreign = /<(?:[\w.-]+:)?foreignObject\b/.test(text);
  const parts = [
    ...(pictures > 0
      ? [
          `${pictures} linked ${pictures === 1 ? 'picture' : 'pictures'}: put ${pictures === 1 ? 'it' : 'them'} into the file before saving`,
        ]
      : []),
    ...(foreign ? ['text boxes of another kind (foreignObject), on the drawing set'] : []),
  ];
  return parts.length > 0 ? parts.join('; ') : null;
}
