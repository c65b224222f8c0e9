import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { stripesOf } from '../../../calc/sheets/drawing/aisle-stripes.ts';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { geojson } from '../../../calc/sheets/geojson/geojson.ts';
import { svg } from '../../../calc/sheets/svg/svg.ts';
import type { AisleKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { dxfOf } from '../../outside/sheets/pdf/lettered.ts';
import { siteOf } from '../../routing/reach/sites.ts';

/** Five feet by eighteen, beside a stall. */
const OUTLINE: Point2[] = [
  [0, 0],
  [5, 0],
  [5, 18],
  [0, 18],
];
const drawn = (kind?: AisleKind) => {
  const site = siteOf({
    aisles: [{ id: 'A1', outline: OUTLINE, ...(kind && { kind }) }],
    georef: { lon: -93, lat: 41, bearing: 0 },
  });
  return { site, drawing: planDrawing(site, plan(site)) };
};

test('an access aisle is striped within its outline, three feet apart', () => {
  const [aisle] = drawn('access').site.aisles;
  const stripes = stripesOf(aisle!);
  // Stripes at 45 degrees cross 23 ft of x + 18 ft of rise in steps of 3 root 2.
  expect(stripes).toHaveLength(5);
  for (const [[ax, ay], [bx, by]] of stripes) {
    expect(bx - ax).toBeCloseTo(by - ay, 9);
    for (const x of [ax, bx]) expect(x >= -1e-9 && x <= 5 + 1e-9).toBe(true);
    for (const y of [ay, by]) expect(y >= -1e-9 && y <= 18 + 1e-9).toBe(true);
  }
  const [first, second] = stripes;
  expect(Math.abs(second![0][0] - second![0][1] - (first![0][0] - first![0][1])) / Math.SQRT2).toBeCloseTo(3, 9);
});

test('the kind of an aisle goes into the drawings and the file of places', async () => {
  const access = drawn('access');
  expect(svg(access.drawing)).toContain('C-PKNG-STRP');
  expect(await dxfOf({ site: access.site, planned: plan(access.site) })).toContain('C-PKNG-STRP');
  const fire = drawn('fire');
  expect(svg(fire.drawing)).toContain('FIRE LANE');
  expect(await dxfOf({ site: fire.site, planned: plan(fire.site) })).toContain('FIRE LANE');
  const [feature] = JSON.parse(geojson(fire.site, plan(fire.site))).features;
  expect(feature.properties).toMatchObject({ list: 'aisles', kind: 'fire' });
  // A plain drive aisle is drawn as ever.
  expect(drawn().drawing.items.filter(({ kind }) => kind === 'text')).toEqual([]);
  expect(drawn().drawing.items.filter(({ layer }) => layer === 'aisleStripes')).toEqual([]);
});
