import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { lotChanged, lotWith, SMALL_LOT } from './faults/small-lot.ts';

// NEC 2023 314.15: in wet locations boxes, conduit bodies and fittings are listed for them.

const planOf = (file: SiteFile) => plan(toSite(file));
const told = (file: SiteFile) => planOf(file).findings.filter(({ rule }) => rule === 'box-location');
const as = (boxLocation: 'damp' | 'dry', file: SiteFile = SMALL_LOT): SiteFile => ({ ...file, rules: { boxLocation } });
const specs = (file: SiteFile) =>
  planOf(file)
    .takeoff.filter(({ item }) => item === 'junction box' || item === 'cover')
    .map(({ spec }) => spec);

test('boxes of a lot are wet, in the plan and in the takeoff, unless the site says what they stand in', () => {
  const wet = planOf(SMALL_LOT);
  expect(wet.boxes.map(({ location }) => location)).toEqual(wet.boxes.map(() => 'wet'));
  expect(specs(SMALL_LOT).length).toBeGreaterThan(0);
  for (const spec of specs(SMALL_LOT)) expect(spec).toMatch(/, wet location$/);
  for (const spec of specs(as('damp'))) expect(spec).toMatch(/, damp location$/);
  for (const spec of specs(as('dry'))) expect(spec).not.toContain('location');
  expect(wet.checks.find(({ rule }) => rule === 'box-location')).toMatchObject({ lookedAt: wet.boxes.length, fail: 0 });
  expect(told(as('damp'))).toEqual([]);
});

test('what the rain reaches is wet whatever the site takes boxes as', () => {
  const roof = lotChanged('raceways', 'R1', { aboveRoof: 1 });
  expect(told(roof)).toEqual([]);
  expect(told(as('damp', roof))).toMatchObject([{ severity: 'fail', about: ['D1', 'D2'], source: 'NEC 2023 314.15' }]);
  const pedestal = lotChanged('drops', 'D2', { mount: 'pedestal', box: [18, 9, 6] });
  expect(told(as('dry', pedestal))).toEqual([]);
  const members = SMALL_LOT.members.map(({ id }) => ({ id, from: [200, 0, 12], to: [240, 0, 12] }) as const);
  expect(told(as('dry', { ...pedestal, members }))).toMatchObject([{ about: ['D2'] }]);
  expect(told({ ...pedestal, members })).toEqual([]);
});

test('a box in the ground is wet where those above it are dry', () => {
  const { boxes } = planOf({
    ...lotWith({
      raceways: [
        {
          id: 'R1',
          path: [
            [-6, 0, 6],
            [-6, 0, -3],
            [-6, 9, -3],
            [9, 9, -3],
            [9, 9, 11],
            [18, 9, 11],
          ],
          method: 'PVC40',
          place: 'underground',
        },
      ],
      pullpoints: [{ id: 'PB1', at: [0, 9, -3] }],
    }),
    rules: { boxLocation: 'dry' },
  });
  expect(boxes.find(({ id }) => id === 'PB1')!.location).toBe('wet');
  expect(boxes.find(({ id }) => id === 'D1')!.location).toBe('dry');
});
