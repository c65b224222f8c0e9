import type { Point2 } from '../../../routing/site/site.ts';
import type { ByteText } from '../byte-text.ts';
import { type EntityWriter, entityWriter } from './entity-writer.ts';
import { VIEW_LAYER } from './layer-names.ts';
import { type Tags, tagText } from './tags.ts';
import { addWipeoutVariables } from './wipeout.ts';

/** A view of the model on a sheet. */
export interface ModelView {
  /** Its middle on the sheet, and its size, inches. */
  readonly at: Point2;
  readonly width: number;
  readonly height: number;
  /** The middle of what it shows, turned as the view is, and how high that is; units of the model. */
  readonly middle: Point2;
  readonly shown: number;
  /** Degrees by which the model is turned in it. */
  readonly twist: number;
}

/** A sheet of paper with its views and what is drawn on it. */
export interface Layout {
  readonly name: string;
  readonly record: string;
  readonly handle: string;
  /** Inches. */
  readonly width: number;
  readonly height: number;
  readonly text: ByteText;
}

/** Begins a sheet: the sheet itself as its first view, then the one of the model, which hides some layers. */
export function beginLayout(
  next: () => string,
  { name, width, height }: Pick<Layout, 'name' | 'width' | 'height'>,
  view: ModelView | null,
  hidden: readonly string[],
): { readonly layout: Omit<Layout, 'text'>; readonly writer: EntityWriter } {
  const record = next();
  const layout = { name, width, height, record, handle: next() };
  const writer = entityWriter(next, record, true);
  const whole: ModelView = {
    at: [width / 2, height / 2],
    width,
    height,
    middle: [width / 2, height / 2],
    shown: height,
    twist: 0,
  };
  [whole, ...(view ? [view] : [])].forEach((one, i) => {
    writer.other('VIEWPORT', { layer: VIEW_LAYER }, (tags) => addView(tags, one, i + 1, i === 0 ? [] : hidden));
  });
  return { layout, writer };
}

/** Its scale cannot be changed by turning a wheel over it. */
const LOCKED = 0x4000;

function addView(tags: Tags, view: ModelView, id: number, hidden: readonly string[]): void {
  const { at, width, height, middle, shown, twist } = view;
  tags.add([100, 'AcDbViewport']);
  tags.point(10, at);
  tags.add([40, width], [41, height], [68, id], [69, id], [12, middle[0]], [22, middle[1]]);
  tags.add([13, 0], [23, 0], [14, 1], [24, 1], [15, 1], [25, 1], [16, 0], [26, 0], [36, 1], [17, 0], [27, 0], [37, 0]);
  tags.add([42, 50], [43, 0], [44, 0], [45, shown], [50, 0], [51, ((twist % 360) + 360) % 360], [72, 1000]);
  for (const layer of hidden) tags.add([331, layer]);
  tags.add([90, LOCKED], [1, ''], [281, 0], [71, 1], [74, 0], [110, 0], [120, 0], [130, 0]);
  tags.add([111, 1], [121, 0], [131, 0], [112, 0], [122, 1], [132, 0], [79, 0], [146, 0]);
}

const MM = 25.4;

/** The section of objects: the list of layouts, the model's first. */
export function addObjects(
  tags: Tags,
  next: () => string,
  model: { readonly record: string; readonly handle: string; readonly extent: readonly [Point2, Point2] },
  layouts: readonly Layout[],
): void {
  const [root, groups, list, wipeouts] = [next(), next(), next(), next()];
  const dictionary = (handle: string, owner: string, entries: readonly (readonly [string, string])[]): void => {
    tags.add([0, 'DICTIONARY'], [5, handle], [330, owner], [100, 'AcDbDictionary'], [281, 1]);
    for (const [name, of] of entries) tags.add([3, name], [350, of]);
  };
  tags.add([0, 'SECTION'], [2, 'OBJECTS']);
  dictionary(root, '0', [
    ['ACAD_GROUP', groups],
    ['ACAD_LAYOUT', list],
    ['ACAD_WIPEOUT_VARS', wipeouts],
  ]);
  dictionary(groups, root, []);
  addWipeoutVariables(tags, wipeouts, root);
  const [[minX, minY], [maxX, maxY]] = model.extent;
  const all = [
    { name: 'Model', record: model.record, handle: model.handle, low: [minX, minY], high: [maxX, maxY], paper: null },
    ...layouts.map((one) => ({ ...one, low: [0, 0], high: [one.width, one.height], paper: one })),
  ] as const;
  dictionary(
    list,
    root,
    all.map(({ name, handle }) => [tagText(name), handle] as const),
  );
  all.forEach(({ name, record, handle, low, high, paper }, i) => {
    tags.add([0, 'LAYOUT'], [5, handle], [330, list], [100, 'AcDbPlotSettings'], [1, ''], [2, ''], [4, ''], [6, '']);
    tags.add([40, 0], [41, 0], [42, 0], [43, 0], [44, (paper?.width ?? 0) * MM], [45, (paper?.height ?? 0) * MM]);
    tags.add([46, 0], [47, 0], [48, 0], [49, 0], [140, 0], [141, 0], [142, 1], [143, 1]);
    tags.add(
      [70, paper ? 688 : 1712],
      [72, 0],
      [73, 0],
      [74, 5],
      [7, ''],
      [75, 16],
      [147, 1],
      [76, 0],
      [77, 2],
      [78, 300],
    );
    tags.add([148, 0], [149, 0], [100, 'AcDbLayout'], [1, tagText(name)], [70, 1], [71, i]);
    tags.add([10, low[0]], [20, low[1]], [11, high[0]], [21, high[1]]);
    tags.point(12, [0, 0, 0]);
    tags.point(14, low);
    tags.point(15, high);
    tags.add([146, 0]);
    tags.point(13, [0, 0, 0]);
    tags.point(16, [1, 0, 0]);
    tags.point(17, [0, 1, 0]);
    tags.add([76, 0], [330, record]);
  });
  tags.add([0, 'ENDSEC']);
}
