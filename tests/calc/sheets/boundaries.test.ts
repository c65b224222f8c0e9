import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { boundaryDimensions } from '../../../calc/sheets/pdf/plans/boundary-labels.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { dimensionLine } from '../../../routing/site/kinds/dimensions.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { boundaryDistance } from '../../../routing/standing/boundary-distance.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import { dxfOf, svgOf } from '../../outside/sheets/pdf/lettered.ts';
import { SMALL } from '../../web/document/small-site.ts';
import { drawnSheets } from './pdf/drawn-sheets.ts';

const site = toSite({ ...SMALL, gridlines: { x: [], y: [] }, drawings: { purpose: 'permit' } });
const [boundary] = site.boundaries;
const [panel] = site.equipment.filter(({ kind, existing }) => kind !== 'source' && existing !== true);

test('a permit set has the property line with its name, and how far new equipment stands from it', async () => {
  const sheets = await drawnSheets(site, 'ANSI D');
  const plans = sheets.filter(({ key }) => /^(plan|enlarged)/.test(key));
  const lines = plans.flatMap(({ strokes }) => strokes.filter(({ layer }) => layer === 'property'));
  expect(lines.length).toBeGreaterThan(0);
  expect(lines.every(({ ink }) => ink.dash?.length === 6)).toBe(true);
  const words = plans.flatMap(({ texts }) => texts.map(({ text }) => text));
  expect(words).toContain('RIGHT-OF-WAY LINE: Elm Street');
  const { feet } = boundaryDistance(panel!, boundary!);
  expect(words).toContain(printLength(feet, 'ft'));
  const legend = sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  expect(legend).toContain(LAYERS.property.says);
});

test('DXF and SVG have it on a layer of its own, with its name and that distance as a dimension', async () => {
  const of = { site, planned: plan(site) };
  const [dxf, svg] = await Promise.all([dxfOf(of), svgOf(of)]);
  expect(svg).toContain(`<g id="${LAYERS.property.name}"`);
  expect(svg).toContain('RIGHT-OF-WAY LINE: Elm Street');
  const groups = dxf.split(/\r?\n/);
  const entities = groups.flatMap((line, i) =>
    line.trim() === '8' && groups[i + 1] === LAYERS.property.name
      ? [groups.slice(Math.max(0, i - 12), i).join(' ')]
      : [],
  );
  expect(entities.some((before) => before.includes('LWPOLYLINE') || before.includes('LINE'))).toBe(true);
  // What each dimension says that it measures, feet.
  const { feet } = boundaryDistance(panel!, boundary!);
  const measured = [...dxf.matchAll(/AcDbDimension\r?\n[\s\S]*?\r?\n *42\r?\n *([\d.]+)/g)].map(([, said]) =>
    Number(said),
  );
  expect(measured.some((said) => Math.abs(said - feet) < 1e-6)).toBe(true);
  expect(svg).toContain(
    printLength(boundaryDistance(panel!, boundary!).feet, 'ft').replaceAll("'", '&#39;').replaceAll('"', '&quot;'),
  );
});

test('the figure of a distance stands on no equipment', () => {
  const dimensions = boundaryDimensions(site);
  expect(dimensions).toHaveLength(1);
  const [[ax, ay], [bx, by]] = dimensionLine(dimensions[0]!);
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
  for (const one of site.equipment) {
    const { minX, minY, maxX, maxY } = boxOf(footprintOf(one));
    expect([one.id, x > minX && x < maxX && y > minY && y < maxY]).toEqual([one.id, false]);
  }
});

test('the cover of a lot that has boundaries names its street and its lines beside scale and north, and says what it shows', async () => {
  const read = readSite(readFileSync('samples/fleet-yard.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  const coverOf = async (boundaries: NonNullable<typeof read.file.boundaries>): Promise<string[]> => {
    const file = { ...read.file, boundaries, drawings: { purpose: 'permit' as const } };
    const [cover] = await drawnSheets(toSite(file), 'ANSI D');
    return cover!.texts.map(({ text }) => text);
  };
  const words = await coverOf(read.file.boundaries ?? []);
  for (const said of [
    'STREET CENTERLINE: Quarry Road',
    'RIGHT-OF-WAY LINE',
    'PROPERTY LINE',
    'SITE AND WHAT BOUNDS IT',
    '80 ft',
  ])
    expect(words).toContain(said);
  const bare = await coverOf([]);
  expect(bare).toContain('SITE');
  expect(bare.filter((text) => /STREET|PROPERTY|RIGHT-OF-WAY|BOUNDS/.test(text))).toEqual([]);
});
