import DxfParser, { type IDimensionEntity, type ILwpolylineEntity, type ITextEntity } from 'dxf-parser';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { geojson } from '../../../calc/sheets/geojson/geojson.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { setOf } from './pdf/drawing-set.ts';
import { dxfOf, svgOf } from './pdf/lettered.ts';
import { readPdf } from './pdf/read-pdf.ts';
import type { Planned } from './planned-samples.ts';

const BARE = libraryLot();
const NOTED: SiteFile = {
  ...BARE,
  notes: [{ id: 'N1', at: [20, 30], text: 'Stub-up by the owner', to: [10, 20] }],
  dimensions: [{ id: 'DIM1', from: [0, -4], to: [23.5, -4], offset: -3 }],
  clouds: [
    {
      id: 'CL1',
      outline: [
        [30, -10],
        [30, 10],
        [50, 10],
        [50, -10],
      ],
      mark: 'B7',
    },
  ],
};
const site = toSite(NOTED);
const planned = plan(site);

// The contract: they are drawn, printed and exported, and no stage reads them.
test('the plan is the same with notes, dimensions and clouds and without', () => {
  expect(JSON.stringify(planned)).toBe(JSON.stringify(plan(toSite(BARE))));
});

test('a DXF has them as text and as geometry at their places', async () => {
  const read = new DxfParser().parseSync(await dxfOf({ site, planned }))!;
  const texts = read.entities.filter(({ type }) => type === 'TEXT') as ITextEntity[];
  const note = texts.find(({ text }) => text === 'Stub-up by the owner')!;
  expect(note.layer).toBe('G-ANNO-NOTE');
  expect([note.startPoint.x, note.startPoint.y]).toEqual([20, 30]);
  // 23.5 ft, over the middle of a line 3 ft to the right of the way, which runs along x.
  const own = read.entities.filter(({ layer }) => layer === 'G-ANNO-DIMS') as IDimensionEntity[];
  expect(own.map(({ type, actualMeasurement }) => [type, actualMeasurement])).toEqual([['DIMENSION', 23.5]]);
  const { entities } = read.blocks[own[0]!.block]!;
  const figure = entities.find(({ type }) => type === 'TEXT') as ITextEntity;
  expect(figure.text).toBe('23\' 6"');
  const ends = (entities as ILwpolylineEntity[]).flatMap(({ vertices }) =>
    vertices ? [vertices.map(({ x, y }) => [x, y])] : [],
  );
  expect(ends).toContainEqual([
    [0, -7],
    [23.5, -7],
  ]);
  // Drawn clockwise, the scallops bulge outward all the same: a point of each outside, none farther than half a scallop.
  const cloud = read.entities.find(
    ({ layer, type }) => layer === 'G-ANNO-REVS' && type === 'LWPOLYLINE',
  ) as ILwpolylineEntity;
  const [xs, ys] = [cloud.vertices.map(({ x }) => x), cloud.vertices.map(({ y }) => y)];
  expect(Math.min(...xs)).toBeCloseTo(29, 6);
  expect(Math.max(...xs)).toBeCloseTo(51, 6);
  expect(Math.min(...ys)).toBeCloseTo(-11, 6);
  expect(Math.max(...ys)).toBeCloseTo(11, 6);
  expect(texts.map(({ text }) => text)).toContain('B7');
});

test('an SVG has their words', async () => {
  const text = await svgOf({ site, planned });
  for (const words of ['Stub-up by the owner', '23&#39; 6&quot;', 'B7']) expect(text).toContain(`>${words}</text>`);
});

test('GeoJSON has them with their own fields, from which they are read back', () => {
  const { features } = JSON.parse(
    geojson(toSite({ ...NOTED, georef: { lon: -98, lat: 39, bearing: 0 } }), planned),
  ) as {
    features: readonly { readonly id: string; readonly geometry: { readonly type: string } }[];
  };
  const typeOf = (id: string): string | undefined => features.find((one) => one.id === id)?.geometry.type;
  expect([typeOf('N1'), typeOf('DIM1'), typeOf('CL1')]).toEqual(['Point', 'LineString', 'Polygon']);
});

test('each plan of the drawing set has them', async () => {
  const pdf = await readPdf(await setOf({ site, planned } as Planned, { paper: 'ANSI D' }));
  const sheets = pdf.pages.filter(({ label }) => /^E-[149]/.test(label));
  const words = sheets.flatMap(({ texts }) => texts.map(({ text }) => text));
  for (const each of ['Stub-up by the owner', '23\' 6"', 'B7']) expect(words).toContain(each);
});
