import { expect, test } from 'vitest';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import type { Feeder, SiteFile } from '../../../routing/site/site.ts';
import { panel, raceway, siteOf } from './sites.ts';

const feeder = (id: string, from: string, to: string, length?: number): NonNullable<SiteFile['feeders']>[number] => ({
  id,
  from,
  to,
  conductor: { size: '250', metal: 'copper', sets: 1, insulation: 'THWN-2' },
  breakerAmps: 225,
  ...(length === undefined ? {} : { length }),
});
const raceways = [
  raceway('U1', [
    [0, 0, 4],
    [0, 0, -2],
    [80, 0, -2],
    [80, 0, 4],
  ]),
];
const equipment = [panel('SVC', [0, 0, 4]), panel('P1', [80, 3, 4]), panel('P2', [200, 0, 4])];

test('a feeder is routed from entry to entry along the raceways, tapped at both ends', () => {
  const { routes, findings } = feederRoutesOf(siteOf({ raceways, equipment, feeders: [feeder('F1', 'SVC', 'P1')] }));
  expect(findings).toEqual([]);
  // Down 6, along 80, up 6, across 3.
  expect(routes).toMatchObject([
    { feeder: 'F1', way: { length: 95, taps: { start: 0, end: 3 }, raceways: ['U1'], bends: 3 } },
  ]);
});
test('it may come by any raceway within reach of the equipment it feeds, not only the nearest', () => {
  // U1 ends 1 ft from the entry of P1, U2 passes a slant of 3 by 1 ft from it; under grade the way is the longer.
  const above = raceway('U2', [
    [0, 0, 4],
    [80, 0, 4],
    [80, -1, 4],
    [80, -1, 40],
  ]);
  const near = { ...equipment[1]!, entry: [80, 3, 3] as const };
  const moved = raceway('U1', [...raceways[0]!.path.slice(0, 3), [80, 2, -2], [80, 2, 3]]);
  const { routes } = feederRoutesOf(
    siteOf({ raceways: [moved, above], equipment: [equipment[0]!, near], feeders: [feeder('F1', 'SVC', 'P1')] }),
  );
  expect(routes[0]!.way!.raceways).toEqual(['U2']);
  expect(routes[0]!.way!.length).toBeCloseTo(80 + Math.hypot(3, 1), 9);
});
test('one whose length is given is passed over', () => {
  expect(feederRoutesOf(siteOf({ raceways, equipment, feeders: [feeder('F1', 'SVC', 'P1', 120)] })).routes).toEqual([]);
});
test('one that no raceways lead along is told', () => {
  const { routes, findings } = feederRoutesOf(siteOf({ raceways, equipment, feeders: [feeder('F2', 'SVC', 'P2')] }));
  expect(routes).toEqual([{ feeder: 'F2', way: null }]);
  expect(findings).toMatchObject([{ severity: 'fail', rule: 'no-feeder-route', about: ['F2', 'SVC', 'P2'] }]);
});
test('its way is kept while nothing under it changes, and found anew when the equipment moves', () => {
  const site = siteOf({ raceways, equipment, feeders: [feeder('F1', 'SVC', 'P1')] });
  const way = feederRoutesOf(site).routes[0]!.way;
  expect(feederRoutesOf({ ...site }).routes[0]!.way).toBe(way);
  const moved = {
    ...site,
    equipment: [{ ...site.equipment[0]!, entry: [0, 0, 3] as const }, ...site.equipment.slice(1)],
  };
  expect(feederRoutesOf(moved).routes[0]!.way!.length).toBe(94);
  const stray: Feeder = { ...site.feeders[0]!, to: 'P9' };
  expect(() => feederRoutesOf({ ...site, feeders: [stray] })).toThrow(RangeError);
});
