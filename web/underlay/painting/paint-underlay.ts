import { type Box, boxHolds } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import type { Underlay } from '../../../routing/site/site.ts';
import type { DrawUnder } from '../../board/painting/painting.ts';
import type { BoardPen, Frame } from '../../board/pictures/frame.ts';
import type { DocumentStore } from '../../document/store.ts';
import { boxInUnderlay, cornersOf, inUnderlay, onSite } from '../placing/placement.ts';
import type { UnderlayStore } from '../underlay-store.ts';
import { underlaysOf } from '../underlays.ts';
import { type Colors, MAX_SIDE, type UnderlayPicture } from './picture.ts';

/** Pixels to the longest side of the bitmap that shows the whole, whatever the zoom. */
const WHOLE_SIDE = 2048;
/** The hand has to rest so long before the part in view is drawn sharp, milliseconds. */
const REST_MS = 140;
const DIM = 0.5;

interface Bitmap {
  readonly picture: UnderlayPicture;
  readonly part: Box;
  readonly perUnit: number;
  readonly ink: string;
  readonly image: CanvasImageSource;
}

type PaintLayer = (pen: BoardPen, frame: Frame, underlay: Underlay, picture: UnderlayPicture) => number;

/** Paints the underlays of the open site, from the lowest up. */
export function underlayPainter(document: DocumentStore, underlays: UnderlayStore, redraw: () => void): DrawUnder {
  const painters = new Map<string, PaintLayer>();
  return (pen, frame) => {
    const { layers } = underlays.getState();
    const seen = new Set<string>();
    let drawn = 0;
    underlaysOf(document.getState().site).forEach((underlay, i) => {
      const layer = layers[i];
      if (!layer?.picture || underlay.hidden) return;
      // Of one file laid down twice each has a zoom of its own.
      const key = seen.has(layer.key) ? `${layer.key} ${i}` : layer.key;
      seen.add(key);
      const painter = painters.get(key) ?? layerPainter(underlays, redraw);
      painters.set(key, painter);
      drawn += painter(pen, frame, underlay, layer.picture);
    });
    for (const key of painters.keys()) if (!seen.has(key)) painters.delete(key);
    return drawn;
  };
}

/**
 * Paints one as bitmaps: one of the whole that is always there, and one of the part in view that is drawn anew for each
 * step of the zoom, when the hand rests. Nothing but `drawImage` happens while the drawing is pushed.
 */
function layerPainter(underlays: UnderlayStore, redraw: () => void): PaintLayer {
  let whole: Bitmap | null = null;
  let sharp: Bitmap | null = null;
  let busy = false;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let wanted: (() => void) | null = null;
  const isShown = (picture: UnderlayPicture): boolean =>
    underlays.getState().layers.some((layer) => layer.picture === picture);

  const render = async (
    picture: UnderlayPicture,
    file: string,
    part: Box,
    perUnit: number,
    colors: Colors,
  ): Promise<Bitmap | null> => {
    busy = true;
    try {
      const image = await picture.render(part, perUnit, colors);
      return { picture, part, perUnit, ink: colors.ink, image };
    } catch (error) {
      // A picture that was taken away while it was drawn has no fault.
      if (isShown(picture)) underlays.fail(picture, file, error);
      return null;
    } finally {
      busy = false;
      const next = wanted;
      wanted = null;
      next?.();
    }
  };

  const sharpen = (picture: UnderlayPicture, underlay: Underlay, frame: Frame, colors: Colors): void => {
    const perUnit = stepOf(underlay.scale * frame.scale * (devicePixelRatio || 1));
    const part = inView(picture, underlay, frame);
    if (!part || !whole || (perUnit <= whole.perUnit && boxHolds(whole.part, part))) return;
    if (sharp && sharp.perUnit >= perUnit && sharp.ink === colors.ink && boxHolds(sharp.part, part)) return;
    if (busy) {
      wanted = () => sharpen(picture, underlay, frame, colors);
      return;
    }
    const roomy = grown(part, picture.extent ?? picture.box);
    const most = MAX_SIDE / Math.max(roomy.maxX - roomy.minX, roomy.maxY - roomy.minY);
    void render(picture, underlay.file, roomy, Math.min(perUnit, most), colors).then((bitmap) => {
      if (!bitmap || !isShown(picture)) return;
      sharp = bitmap;
      redraw();
    });
  };

  return (pen, frame, underlay, picture) => {
    const colors = { ink: frame.ink.ink, dark: isDark(frame.ink.paper) };
    if (sharp && (sharp.picture !== picture || sharp.ink !== colors.ink)) sharp = null;
    if (whole?.picture !== picture || whole.ink !== colors.ink) {
      if (whole?.picture !== picture) whole = null;
      const { box } = picture;
      const perUnit = WHOLE_SIDE / Math.max(box.maxX - box.minX, box.maxY - box.minY, 1e-9);
      if (!busy)
        void render(picture, underlay.file, box, perUnit, colors).then((bitmap) => {
          if (!bitmap || !isShown(picture)) return;
          whole = bitmap;
          redraw();
        });
    }
    clearTimeout(resting);
    resting = setTimeout(() => sharpen(picture, underlay, frame, colors), REST_MS);
    pen.globalAlpha = 1 - (underlay.dim ?? DIM);
    const drawn = paint(pen, frame, underlay, whole, sharp);
    pen.globalAlpha = 1;
    return drawn;
  };
}

function paint(pen: BoardPen, frame: Frame, underlay: Underlay, whole: Bitmap | null, sharp: Bitmap | null): number {
  const shownAt = underlay.scale * frame.scale * (devicePixelRatio || 1);
  // Far out the bitmap of the whole is as sharp, and in one piece.
  const useful =
    sharp && (shownAt > (whole?.perUnit ?? 0) || !whole || !boxHolds(whole.part, sharp.part)) ? sharp : null;
  if (whole) {
    pen.save();
    if (useful) {
      // Beside the sharp part, not under it: both are see-through.
      pen.beginPath();
      pen.rect(0, 0, frame.width, frame.height);
      for (const [i, corner] of cornersOf(useful.part).entries()) {
        const [x, y] = onSite(underlay, corner);
        if (i === 0) pen.moveTo(frame.left + x * frame.scale, frame.top - y * frame.scale);
        else pen.lineTo(frame.left + x * frame.scale, frame.top - y * frame.scale);
      }
      pen.closePath();
      pen.clip('evenodd');
    }
    drawBitmap(pen, frame, underlay, whole);
    pen.restore();
  }
  if (useful) drawBitmap(pen, frame, underlay, useful);
  return (whole ? 1 : 0) + (useful ? 1 : 0);
}

function drawBitmap(pen: BoardPen, frame: Frame, underlay: Underlay, { part, image }: Bitmap): void {
  const { width, height } = image as HTMLCanvasElement;
  const [x, y] = onSite(underlay, [part.minX, part.maxY]);
  const [cos, sin] = direction(underlay.rotation ?? 0);
  const k = underlay.scale * frame.scale;
  // The canvas may be a fraction of a pixel off the part it shows.
  const across = (k * (part.maxX - part.minX)) / width;
  const down = (k * (part.maxY - part.minY)) / height;
  pen.save();
  pen.transform(
    across * cos,
    -across * sin,
    down * sin,
    down * cos,
    frame.left + x * frame.scale,
    frame.top - y * frame.scale,
  );
  pen.imageSmoothingEnabled = true;
  pen.drawImage(image, 0, 0);
  pen.restore();
}

/** The part of the picture in view; null where none is. */
function inView(picture: UnderlayPicture, underlay: Underlay, frame: Frame): Box | null {
  const from = inUnderlay(underlay, [0, 0]);
  if (!from.every(Number.isFinite)) return null;
  const seen = boxInUnderlay(underlay, frame.box);
  const box = picture.extent ?? picture.box;
  const part = {
    minX: Math.max(box.minX, seen.minX),
    minY: Math.max(box.minY, seen.minY),
    maxX: Math.min(box.maxX, seen.maxX),
    maxY: Math.min(box.maxY, seen.maxY),
  };
  return part.minX < part.maxX && part.minY < part.maxY ? part : null;
}

/** With room to be pushed about in, within the whole. */
function grown(part: Box, whole: Box): Box {
  const dx = (part.maxX - part.minX) * 0.25;
  const dy = (part.maxY - part.minY) * 0.25;
  return {
    minX: Math.max(whole.minX, part.minX - dx),
    minY: Math.max(whole.minY, part.minY - dy),
    maxX: Math.min(whole.maxX, part.maxX + dx),
    maxY: Math.min(whole.maxY, part.maxY + dy),
  };
}

/** Steps of the zoom at which it is drawn anew: each a root of two above the last. */
const stepOf = (perUnit: number): number => 2 ** (Math.ceil(Math.log2(perUnit) * 2) / 2);

function isDark(color: string): boolean {
  const [r = 255, g = 255, b = 255] = (/^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(color) ?? [])
    .slice(1)
    .map((part) => Number.parseInt(part, 16));
  return 0.3 * r + 0.6 * g + 0.1 * b < 110;
}
