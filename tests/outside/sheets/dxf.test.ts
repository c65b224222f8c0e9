import DxfParser, { type ILwpolylineEntity, type IPolylineEntity, type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { withDimensions } from '../../../calc/sheets/drawing/dimensions.ts';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { dxf } from '../../../calc/sheets/dxf.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

const read = (text: string) => {
  const drawing = new DxfParser().parseSync(text);
  if (!drawing) throw new Error('the reader gave nothing');
  return drawing;
};

// Read back by dxf-parser, a reader that is not ours.
describe('the DXF, read by another program', () => {
  const { site, planned } = plannedSample('library-lot');
  const drawing = read(dxf(planDrawing(site, planned), site.units));
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
  test('has its dimensions as lines and text', () => {
    const dimensioned = read(dxf(withDimensions(planDrawing(site, planned), site), site.units));
    const words = dimensioned.entities
      .filter(({ type, layer }) => type === 'TEXT' && layer === 'E-POWR-DIMS')
      .map((entity) => (entity as ITextEntity).text);
    // Columns at 0, 26, 53 and 79 ft: 26, 27 and 26 ft between gridlines; D02 hangs 1 ft before line 2, 9 ft past A.
    expect(words).toEqual(expect.arrayContaining(['26\' 0"', '27\' 0"', '1\' 0"', '9\' 0"']));
    expect(
      dimensioned.entities.filter(({ type, layer }) => type === 'LWPOLYLINE' && layer === 'E-POWR-DIMS'),
    ).toHaveLength(3 * words.length);
  });
  test('carries the cautions', () => {
    const words = drawing.entities.filter(({ type }) => type === 'TEXT').map((entity) => (entity as ITextEntity).text);
    expect(words.join(' ')).toContain('authority having jurisdiction');
  });
  test('in a metric site is in metres', () => {
    const metric = plannedSample('library-lot', (file) => ({ ...file, units: 'm' }));
    expect(read(dxf(planDrawing(metric.site, metric.planned), 'm')).header.$INSUNITS).toBe(6);
  });
});

describe('names in the DXF', () => {
  test('bring in no entity', () => {
    const plain = plannedSample('library-lot');
    const nasty = nastyLot();
    const count = ({ site, planned }: typeof plain): number =>
      read(dxf(planDrawing(site, planned), site.units)).entities.length;
    expect(count(nasty)).toBe(count(plain));
  });
});
