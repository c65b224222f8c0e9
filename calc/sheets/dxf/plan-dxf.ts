import { direction } from '../../../routing/plane/direction.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { LAYERS } from '../drawing/layers.ts';
import { fromSheet, type LetteredParts, type LetteredPlan, letteredPlan } from '../lettered/lettered-plan.ts';
import type { SheetMark } from '../lettered/mark.ts';
import { placedMarks } from '../lettered/placed-marks.ts';
import { recordingPen } from '../lettered/recording-pen.ts';
import { INCH, MM } from '../pdf/kit/area.ts';
import type { SheetFrame } from '../pdf/kit/draft.ts';
import { pointsPerFoot, type Scale } from '../pdf/kit/view/scales.ts';
import type { View } from '../pdf/kit/view/view.ts';
import { setSheets } from '../pdf/set/set-sheets.ts';
import { mostCircuits } from './attributes.ts';
import { symbolBlocks } from './blocks.ts';
import type { DimStyle, WrittenBlock } from './dimension-entities.ts';
import { dxfBytes } from './document.ts';
import { type EntityWriter, entityWriter } from './entity-writer.ts';
import { dxfLayers, letteredLayer, lineTypeOf, SHEET_LAYER } from './layer-names.ts';
import { beginLayout, type Layout, type ModelView } from './layouts.ts';
import { addMarks, type MarkRoom } from './mark-entities.ts';
import { addModel } from './model.ts';
import type { LineType } from './tables.ts';
import { handles } from './tags.ts';

/**
 * The plan as the bytes of a DXF file (AC1018). The model is in the site's units as the site file lies, with blocks that
 * carry attributes, real dimensions, and words where the drawing set has room for them; each plan sheet of the set is a
 * layout in inches with its title block, its own words and a view of the model to its scale, in which the words of the
 * model are hidden. With a revision it has the clouds and deltas of the revised set.
 */
export async function planDxf(site: Site, plan: Plan, parts: LetteredParts): Promise<Uint8Array<ArrayBuffer>> {
  const lettered = await letteredPlan(site, plan, parts);
  const { next, seed } = handles();
  const scaled = (feet: number): number => fromFeet(feet, site.units);
  const isMetric = site.units === 'm';
  const layers = dxfLayers().map((layer) => ({ ...layer, handle: next() }));
  const types = lineTypes(scaled(1));
  const blocks: WrittenBlock[] = symbolBlocks(next, scaled, mostCircuits(site));
  const styles = new Map<string, DimStyle>();
  const styleOf = (name: string, perPoint: number, factor: number): DimStyle => {
    const { small } = lettered.job.lettering.sizes;
    const style = { name, letter: 0.7 * small * perPoint, tick: 2.5 * perPoint, past: 4 * perPoint, factor, isMetric };
    styles.set(name, style);
    return style;
  };
  let drawn = 0;
  const block: MarkRoom['block'] = (write) => {
    drawn++;
    blocks.push(write(`*D${drawn}`));
  };
  const record = next();
  const model = entityWriter(next, record, false);
  const perPoint = scaled(1 / pointsPerFoot(lettered.scale));
  addModel(
    model,
    { site, plan, lettered, scaled },
    {
      layerOf: (mark) => letteredLayer(mark.kind === 'dimension' ? 'dimensions' : mark.layer),
      // Feet to inches, for the format writes feet and inches from inches; metres as they are.
      style: styleOf('MODEL', perPoint, isMetric ? 1 : 12),
      next,
      isOnPaper: false,
      block,
      lineType: (dash) => types.named(dash, perPoint * MM),
    },
  );
  const extent = extentOf(lettered, scaled);
  addFoot(model, site.name, extent[0], scaled, lettered.scale);
  const hidden = layers.filter(({ isOfModel }) => isOfModel).map(({ handle }) => handle);
  const layouts = sheetsOf(lettered, scaled).map(({ name, width, height, view, marks, scale }): Layout => {
    const { layout, writer } = beginLayout(next, { name, width, height }, view, hidden);
    addMarks(writer, marks, {
      layerOf: ({ kind, layer }) =>
        layer === null ? (kind === 'dimension' ? LAYERS.dimensions.name : SHEET_LAYER) : LAYERS[layer].name,
      style: styleOf(`SHEET-${scale.ratio}`, 1 / INCH, isMetric ? scale.ratio * 0.0254 : scale.ratio),
      next,
      isOnPaper: true,
      block,
      lineType: (dash) => types.named(dash, MM / INCH),
    });
    return { ...layout, text: writer.written };
  });
  return dxfBytes({
    next,
    seed,
    isMetric,
    lineTypes: types.all(),
    layers,
    dimStyles: [...styles.values()],
    blocks,
    model: { record, text: model.written },
    layouts,
    extent,
  });
}

interface SheetOfModel {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly view: ModelView | null;
  readonly marks: readonly SheetMark[];
  readonly scale: Scale;
}

/** The plan sheets of the set; where it has none, a bare one, for a drawing has one at least. Inches. */
function sheetsOf({ job, scale }: LetteredPlan, scaled: (feet: number) => number): readonly SheetOfModel[] {
  const { sheets, draw } = setSheets(job);
  const [width, height] = [job.shape.width / INCH, job.shape.height / INCH];
  const found = sheets.flatMap(({ number, draft }, i): SheetOfModel[] => {
    if (!draft.plan || (draft.series !== 'E-1' && draft.series !== 'E-4')) return [];
    const pen = recordingPen(job.lettering, { plan: true, gridlines: false });
    draw(pen, i);
    const marks = placedMarks(pen.marks, { at: ([x, y]) => [x / INCH, y / INCH], perPoint: 1 / INCH, turn: 0 });
    const view = modelView(draft.frame ?? null, draft.plan, scaled);
    return [{ name: `${number} ${draft.title}`, width, height, view, marks, scale: draft.plan.scale }];
  });
  return found.length > 0 ? found : [{ name: 'Sheet', width, height, view: null, marks: [], scale }];
}

/** The view of a sheet; the model is turned in it where the sheets lie along turned gridlines. */
function modelView(frame: SheetFrame, { area, window }: View, scaled: (feet: number) => number): ModelView {
  const { minX, minY, maxX, maxY } = window;
  const turned = frame?.rotation ?? 0;
  const [x, y] = fromSheet(frame, [(minX + maxX) / 2, (minY + maxY) / 2]);
  const [cos, sin] = direction(-turned);
  return {
    at: [(area.x + area.width / 2) / INCH, (area.y + area.height / 2) / INCH],
    width: area.width / INCH,
    height: area.height / INCH,
    middle: [scaled(x * cos - y * sin), scaled(x * sin + y * cos)],
    shown: scaled(maxY - minY),
    twist: -turned,
  };
}

/** Line types of the layers, and of pens with dashes of their own, each by its dashes in units of where it is used. */
function lineTypes(foot: number) {
  const found = new Map<string, LineType>();
  for (const layer of Object.keys(LAYERS) as (keyof typeof LAYERS)[]) {
    const { says, dash } = { dash: undefined, ...LAYERS[layer] };
    // Millimetres of a plot at 1/8 in = 1 ft, on which a foot is 3.175 mm.
    if (dash)
      found.set(lineTypeOf(layer), {
        name: lineTypeOf(layer),
        says,
        pattern: [(dash[0] / 3.175) * foot, (-dash[1] / 3.175) * foot],
      });
  }
  return {
    all: () => [...found.values()],
    named: (dash: readonly number[], unit: number): string => {
      const pattern = dash.map((mm, i) => mm * unit * (i % 2 === 0 ? 1 : -1));
      const known = [...found.values()].find((one) => one.pattern.join() === pattern.join());
      if (known) return known.name;
      const name = `PEN_${found.size + 1}`;
      found.set(name, { name, says: 'dashes of a pen', pattern });
      return name;
    },
  };
}

function extentOf({ drawing, marks }: LetteredPlan, scaled: (feet: number) => number): readonly [Point2, Point2] {
  let { minX, minY, maxX, maxY } = drawing.extent ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  for (const mark of marks) {
    const points =
      mark.kind === 'line' || mark.kind === 'fill'
        ? mark.points
        : mark.kind === 'dimension'
          ? [mark.from, mark.to]
          : [mark.at];
    for (const [x, y] of points) {
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
  }
  // What stands under the plan is within it too.
  return [
    [scaled(minX), scaled(minY - FOOT)],
    [scaled(maxX), scaled(maxY)],
  ];
}

/** Room for the title and the cautions under the plan, feet. */
const FOOT = 14;
const LINE = 1.4;

function addFoot(
  writer: EntityWriter,
  name: string,
  [x, y]: Point2,
  scaled: (feet: number) => number,
  scale: Scale,
): void {
  const write = (words: string, up: number, height: number): void =>
    writer.text(
      { words, at: [x, y + scaled(up)], width: 0, height: scaled(height), turn: 0, style: 'LETTERS' },
      { layer: SHEET_LAYER },
    );
  write(`${name}: plan, lettered for ${scale.says}. Sheets to scale are in its layouts.`, FOOT - 4, 1.2);
  wrapped(CAUTIONS, 110).forEach((words, i) => {
    write(words, FOOT - 6 - LINE * i, 0.8);
  });
}

/** Words in lines of at most `width` letters. */
function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
