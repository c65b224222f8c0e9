import { PDFDict, type PDFDocument, PDFHexString, PDFName, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import { METRES_PER_FOOT } from '../../../../../routing/site/numbers/units.ts';
import { onGrid } from '../../../../../routing/site/place/grid-frame.ts';
import { placeRdf, type StatedPlace } from '../../../../../routing/site/place/stated-place.ts';
import type { Site } from '../../../../../routing/site/site.ts';
import { right, top } from '../area.ts';
import type { SheetFrame } from '../draft.ts';
import { inert } from '../lettering/inert.ts';
import type { View } from './view.ts';

/** Where a plan lies on its sheet, which lies on the site as its frame does. */
export function placeOfView({ georef }: Pick<Site, 'georef'>, { perFoot, at }: View, frame: SheetFrame): StatedPlace {
  return {
    feetPerUnit: 1 / perFoot,
    origin: at(frame ? onGrid(frame, [0, 0]) : [0, 0]),
    turned: frame?.rotation ?? 0,
    ...(georef && { georef }),
  };
}

/**
 * Has a page state the scale of its plan and where that lies: as a viewport with a rectilinear measure (ISO 32000-1, 12.9),
 * by which viewers measure on it, and as XMP, which also says how it is turned and where the site lies on the ground.
 */
export function statePlace(
  doc: PDFDocument,
  page: PDFRef,
  title: string,
  view: View,
  site: Site,
  frame: SheetFrame,
): void {
  const { context } = doc;
  const place = placeOfView(site, view, frame);
  const [unit, area, perPoint] =
    site.units === 'm'
      ? (['m', 'sq m', place.feetPerUnit * METRES_PER_FOOT] as const)
      : (['ft', 'sq ft', place.feetPerUnit] as const);
  const format = (words: string, times: number) => ({ Type: 'NumberFormat', U: PDFString.of(words), C: times, D: 100 });
  const viewport = context.obj({
    Type: 'Viewport',
    BBox: [view.area.x, view.area.y, right(view.area), top(view.area)],
    Name: PDFHexString.fromText(inert(title)),
    Measure: {
      Type: 'Measure',
      Subtype: 'RL',
      R: PDFHexString.fromText(view.scale.says),
      X: [format(unit, perPoint)],
      D: [format(unit, 1)],
      A: [format(area, 1)],
      O: [...place.origin],
    },
  });
  const node = context.lookup(page, PDFDict);
  node.set(PDFName.of('VP'), context.obj([viewport]));
  const packet = [
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    `<x:xmpmeta xmlns:x="adobe:ns:meta/">${placeRdf(place)}</x:xmpmeta>`,
    '<?xpacket end="r"?>',
  ].join('\n');
  const metadata = context.stream(new TextEncoder().encode(packet), { Type: 'Metadata', Subtype: 'XML' });
  node.set(PDFName.of('Metadata'), context.register(metadata));
}
