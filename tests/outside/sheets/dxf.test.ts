import DxfParser, {
  type IDimensionEntity,
  type ILwpolylineEntity,
  type IPolylineEntity,
  type ITextEntity,
} from 'dxf-parser';
import { beforeAll, describe, expect, test } from 'vitest';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { dxfOf } from './pdf/lettered.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

const read = (text: string) => {
  const drawing = new DxfParser().parseSync(text);
  if (!drawing) throw new Error('the reader gave nothing');
  return drawing;
};

// Read back by dxf-parser, a reader that is not ours.
describe('the DXF, read by another program', () => {
  const { site, planned } = plannedSample('library-lot');
  let drawing: ReturnType<typeof read>;
  beforeAll(async () => {
    drawing = read(await dxfOf({ site, planned }));
  });
  const onLayer = (layer: string) => drawing.entities.filter((entity) => entity.layer === layer);

  test('says it is in feet', () => {
    expect(drawing.header.$INSUNITS).toBe(2);
  });
  test('has a layer for each kind of thing', () => {
    expect(Object.keys(drawing.tables.layer.layers)).toEqual(
      expect.arrayContaining(['C-PKNG-STAL', 'S-COLS', 'S-GRID', 'E-POWR-EQPM', 'E-POWR-CNDT', 'E-POWR-DROP']),
    );
  });
  test('has every stall as a closed outline at its place', () => {
    const outlines = onLayer('C-PKNG-STAL') as ILwpolylineEntity[];
    expect(outlines).toHaveLength(site.stalls.length);
    const [first] = outlines;
    expect(first?.shape).toBe(true);
    // S01 is 11 ft wide and 18 ft deep with its head on the column line.
    const xs = first?.vertices.map(({ x }) => x) ?? [];
    const ys = first?.vertices.map(({ y }) => y) ?? [];
    expect(
      [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)].map((v) => Math.round(v * 1e6) / 1e6),
    ).toEqual([0, 11, 0, 18]);
  });
  test('has every raceway in space', () => {
    const lines = onLayer('E-POWR-CNDT') as IPolylineEntity[];
    expect(lines).toHaveLength(site.raceways.length);
    expect(lines[0]?.vertices.map(({ x, y, z }) => [x, y, z])).toEqual(
      site.raceways[0]?.path.map((point) => [...point]),
    );
  });
  test('has every box and retractor as a block', () => {
    expect(onLayer('E-POWR-DROP').filter(({ type }) => type === 'INSERT')).toHaveLength(2 * site.drops.length);
    expect(Object.keys(drawing.blocks)).toEqual(expect.arrayContaining(['BOX', 'RETRACTOR', 'PULL_POINT']));
  });
  test('has its dimensions as entities with their blocks, drawn for readers that know none', () => {
    const dimensions = onLayer('E-POWR-DIMS').filter(({ type }) => type === 'DIMENSION') as IDimensionEntity[];
    const words = dimensions.flatMap(({ block }) =>
      drawing.blocks[block]!.entities.filter(({ type }) => type === 'TEXT').map((one) => (one as ITextEntity).text),
    );
    // D01 hangs at 13.5 ft, D02 at 25, both 9 ft past A.
    expect(words).toEqual(expect.arrayContaining(['13\' 6"', '11\' 6"', '9\' 0"']));
    for (const { block } of dimensions)
      expect(drawing.blocks[block]!.entities.filter(({ type }) => type === 'LWPOLYLINE').length).toBeGreaterThan(2);
  });
  test('carries the cautions', () => {
    const words = drawing.entities.filter(({ type }) => type === 'TEXT').map((entity) => (entity as ITextEntity).text);
    expect(words.join(' ')).toContain('authority having jurisdiction');
  });
  test('in a metric site is in metres', async () => {
    const metric = plannedSample('library-lot', (file) => ({ ...file, units: 'm' }));
    expect(read(await dxfOf(metric)).header.$INSUNITS).toBe(6);
  });
});

describe('names in the DXF', () => {
  test('bring in no entity', async () => {
    const { site, planned } = nastyLot();
    const { entities } = read(await dxfOf({ site, planned }));
    const layers = Object.values(LAYERS).map(({ name }) => name);
    // Lines, blocks and dimensions are those of the plan; words are as many as have room.
    const kinds = new Set([
      'LWPOLYLINE',
      'POLYLINE',
      'CIRCLE',
      'TEXT',
      'INSERT',
      'DIMENSION',
      'SOLID',
      'VIEWPORT',
      'ATTRIB',
    ]);
    for (const { type, layer } of entities) {
      expect(kinds).toContain(type);
      expect(
        [...layers, 'G-ANNO-TTLB', 'G-ANNO-VPRT', 'G-ANNO-DIMS'].some(
          (name) => layer.startsWith(name) || layer.startsWith('E-POWR'),
        ),
      ).toBe(true);
    }
    const stalls = entities.filter(({ layer, type }) => layer === 'C-PKNG-STAL' && type === 'LWPOLYLINE');
    expect(stalls).toHaveLength(site.stalls.length);
  });
});
