import {
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFPageLeaf,
  type PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import { ANYWHERE, type Packer } from '../../packing.ts';
import { inert } from './lettering/inert.ts';
import { FONT_NAMES, type Lettering } from './lettering/lettering.ts';
import type { SheetShape } from './paper.ts';
import { fadedName } from './pen.ts';
import { type PlacedUnderlay, underlayName } from './underlay.ts';

const LAYER_NAMES = Object.keys(LAYERS) as LayerName[];

/** The resources that all pages share: fonts, layers, the underlays. */
export function sharedResources(doc: PDFDocument, lettering: Lettering, underlays: readonly PlacedUnderlay[]): PDFRef {
  const { context } = doc;
  const groups = LAYER_NAMES.map((layer) => {
    const { name, says } = LAYERS[layer];
    return context.register(context.obj({ Type: 'OCG', Name: PDFHexString.fromText(`${name} ${says}`) }));
  });
  const usual = context.obj({ Order: groups, ON: groups });
  doc.catalog.set(PDFName.of('OCProperties'), context.obj({ OCGs: groups, D: usual }));
  const properties = context.obj(Object.fromEntries(LAYER_NAMES.map((layer, i) => [layer, groups[i]!])));
  return context.register(
    context.obj({
      Font: {
        [FONT_NAMES.regular]: lettering.refs.regular,
        [FONT_NAMES.bold]: lettering.refs.bold,
        ...lettering.scripts?.refs,
      },
      Properties: properties,
      ExtGState: Object.fromEntries(
        underlays.map(({ dim }, i) => [fadedName(underlayName(i)), { Type: 'ExtGState', ca: 1 - dim, CA: 1 - dim }]),
      ),
      XObject: Object.fromEntries(underlays.map(({ ref }, i) => [underlayName(i), ref])),
    }),
  );
}

/** Adds a page of a content stream and returns its reference. */
export function addPage(
  doc: PDFDocument,
  shape: Pick<SheetShape, 'width' | 'height'>,
  resources: PDFRef,
  content: Uint8Array,
  packer: Packer = ANYWHERE,
): PDFRef {
  const { context, catalog } = doc;
  // Hung in the tree of pages without a walk over all that are there: a report has them by the thousand.
  const leaf = PDFPageLeaf.withContextAndParent(context, catalog.get(PDFName.of('Pages')) as PDFRef);
  leaf.set(PDFName.of('MediaBox'), context.obj([0, 0, shape.width, shape.height]));
  const page = context.register(leaf);
  catalog.Pages().pushLeafNode(page);
  leaf.set(PDFName.of('Contents'), context.register(context.stream(packer.stream(content), { Filter: 'FlateDecode' })));
  leaf.set(PDFName.of('Resources'), resources);
  return page;
}

/** Names the pages by their sheet numbers and lists them beside the drawing in a viewer. */
export function nameSheets(
  doc: PDFDocument,
  sheets: readonly { readonly number: string; readonly draft: { readonly title: string } }[],
  pages: readonly PDFRef[],
): void {
  const { context, catalog } = doc;
  const labels = sheets.flatMap(({ number }, i) => [PDFNumber.of(i), context.obj({ P: PDFString.of(number) })]);
  catalog.set(PDFName.of('PageLabels'), context.obj({ Nums: labels }));
  const refs = sheets.map(() => context.nextRef());
  const root = context.nextRef();
  sheets.forEach(({ number, draft }, i) => {
    const entry = {
      Title: PDFHexString.fromText(inert(`${number} ${draft.title}`)),
      Parent: root,
      Dest: [pages[i]!, PDFName.of('Fit')],
      ...(i > 0 ? { Prev: refs[i - 1]! } : {}),
      ...(i + 1 < refs.length ? { Next: refs[i + 1]! } : {}),
    };
    context.assign(refs[i]!, context.obj(entry));
  });
  context.assign(root, context.obj({ Type: 'Outlines', First: refs[0]!, Last: refs.at(-1)!, Count: refs.length }));
  catalog.set(PDFName.of('Outlines'), root);
  catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'));
}

/** What a viewer shows as the properties of the file. No times: the same set is the same bytes. */
export function describe(doc: PDFDocument, title: string): void {
  const info = PDFDict.withContext(doc.context);
  info.set(PDFName.of('Title'), PDFHexString.fromText(inert(title)));
  info.set(PDFName.of('Subject'), PDFHexString.fromText('EV charging drops: electrical drawings for review'));
  info.set(PDFName.of('Creator'), PDFHexString.fromText('Overrow'));
  doc.context.trailerInfo.Info = doc.context.register(info);
}
