import {
  DxfWriter,
  LWPolylineFlags,
  PolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { fromFeet } from '../../routing/site/numbers/units.ts';
import type { Units as SiteUnits } from '../../routing/site/schema/vocabulary.ts';
import { CAUTIONS } from '../words/cautions.ts';
import { steady } from '../words/steady.ts';
import type { Drawing, DrawnItem, DrawnText } from './drawing/drawing.ts';
import { LAYERS, type LayerName } from './drawing/layers.ts';
import { SYMBOLS } from './drawing/symbols.ts';

const LAYER_NAMES = Object.keys(LAYERS) as LayerName[];
const ALIGN = {
  left: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  right: TextHorizontalAlignment.Right,
} as const;

/**
 * A drawing as the text of a DXF file (AC1021), in the site's units: a layer a kind of thing, a block a symbol, plan
 * coordinates as drawn, elevations where a line has them. Control characters in names are dropped, for in this format a
 * line end can begin another entity.
 */
export function dxf(drawing: Drawing, units: SiteUnits): string {
  const writer = new DxfWriter();
  writer.setUnits(units === 'ft' ? Units.Feet : Units.Meters);
  writer.setVariable('$MEASUREMENT', { 70: units === 'ft' ? 0 : 1 });
  const scaled = (feet: number): number => steady(fromFeet(feet, units));
  addLineTypes(writer, scaled(1));
  for (const layer of LAYER_NAMES) {
    const { name, index } = LAYERS[layer];
    writer.addLayer(name, index, 'dash' in LAYERS[layer] ? lineTypeOf(layer) : 'Continuous');
  }
  addBlocks(writer, scaled);
  for (const item of drawing.items) addItem(writer, item, scaled);
  const { minX, minY } = drawing.extent ?? { minX: 0, minY: 0 };
  addCautions(writer, scaled(minX), scaled(minY), scaled);
  return writer.stringify();
}

const lineTypeOf = (layer: LayerName): string => `DASH_${LAYERS[layer].name}`;

/** Dashes are given in millimetres of a plot at 1/8 in = 1 ft, on which a foot is 3.175 mm. */
function addLineTypes(writer: DxfWriter, foot: number): void {
  for (const layer of LAYER_NAMES) {
    const { name, says, dash } = { dash: undefined, ...LAYERS[layer] };
    if (dash) writer.addLType(`DASH_${name}`, says, [(dash[0] / 3.175) * foot, (-dash[1] / 3.175) * foot]);
  }
}

function addBlocks(writer: DxfWriter, scaled: (feet: number) => number): void {
  for (const [symbol, { circles, lines }] of Object.entries(SYMBOLS)) {
    const block = writer.addBlock(blockName(symbol));
    for (const { radius } of circles) block.addCircle(point3d(0, 0), scaled(radius));
    for (const { points, closed } of lines)
      block.addLWPolyline(
        points.map(([x, y]) => ({ point: point2d(scaled(x), scaled(y)) })),
        { flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
      );
  }
}

const blockName = (symbol: string): string => symbol.replace('-', '_').toUpperCase();

function addItem(writer: DxfWriter, item: DrawnItem, scaled: (feet: number) => number): void {
  const layerName = LAYERS[item.layer].name;
  switch (item.kind) {
    case 'line': {
      const { points, z, closed } = item;
      if (z)
        writer.addPolyline3D(
          points.map(([x, y], i) => ({ point: point3d(scaled(x), scaled(y), scaled(z[i] as number)) })),
          // Without its flag it is one in the plane, whatever its vertices say.
          { layerName, flags: PolylineFlags.Polyline3D + (closed ? PolylineFlags.Closed : 0) },
        );
      else
        writer.addLWPolyline(
          points.map(([x, y]) => ({ point: point2d(scaled(x), scaled(y)) })),
          { layerName, flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
        );
      return;
    }
    case 'circle':
      writer.addCircle(point3d(scaled(item.at[0]), scaled(item.at[1])), scaled(item.radius), { layerName });
      return;
    case 'text':
      addText(writer, item, layerName, scaled);
      return;
    case 'symbol':
      writer.addInsert(blockName(item.symbol), point3d(scaled(item.at[0]), scaled(item.at[1]), scaled(item.z)), {
        layerName,
      });
  }
}

function addText(writer: DxfWriter, item: DrawnText, layerName: string, scaled: (feet: number) => number): void {
  const at = point3d(scaled(item.at[0]), scaled(item.at[1]));
  writer.addText(at, scaled(item.height), plainText(item.text), {
    layerName,
    rotation: steady(item.turn),
    ...(item.anchor === 'left'
      ? {}
      : {
          horizontalAlignment: ALIGN[item.anchor],
          verticalAlignment: TextVerticalAlignment.BaseLine,
          secondAlignmentPoint: at,
        }),
  });
}

function addCautions(writer: DxfWriter, x: number, y: number, scaled: (feet: number) => number): void {
  const lines = wrapped(CAUTIONS, 110);
  lines.forEach((words, i) => {
    writer.addText(point3d(x, y - scaled(4 + 1.4 * i)), scaled(0.8), plainText(words), {
      layerName: LAYERS.stallNumbers.name,
    });
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

/** Text that can be one group value: no control characters, and no `%%` or `^` codes of the format. */
const plainText = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')
    .replaceAll('%%', '% %')
    .replaceAll('^', '^ ');
