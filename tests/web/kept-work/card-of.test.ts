import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { thumbnailOf } from '../../../web/board/painting/thumbnail.ts';
import { cardOf } from '../../../web/kept-work/card-of.ts';
import { SMALL } from '../document/small-site.ts';

const read = readSite(readFileSync('samples/hospital-lot.site.json', 'utf8'));
const HOSPITAL = read.ok ? read.file : expect.fail('the sample does not read');

const pointsOf = (path: string): readonly (readonly [number, number])[] =>
  [...path.matchAll(/(-?\d+) (-?\d+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

test('a card has the stalls, the drops and the price that the open site would show', async () => {
  const card = await cardOf('d', 7, HOSPITAL, INVENTED_LIST);
  const { cost, site } = alternativeOf('x', toSite(HOSPITAL), INVENTED_LIST);
  expect(card).toMatchObject({ doc: 'd', seq: 7, stalls: site.stalls.length, drops: site.drops.length });
  expect([card.price, card.prices]).toEqual([cost.price, INVENTED_LIST.name]);
});

test('a plan in small lies in its box, north up, in the proportions of the site', () => {
  const { width, height, stalls, drops, raceways } = thumbnailOf(toSite(SMALL));
  for (const [x, y] of [stalls, drops, raceways].flatMap(pointsOf)) {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x).toBeLessThanOrEqual(width);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(height);
  }
  // The first stall is 9 by 18 ft; the raceway lies at its north end.
  const corners = pointsOf(stalls).slice(0, 4);
  const span = (axis: 0 | 1): number =>
    Math.max(...corners.map((corner) => corner[axis])) - Math.min(...corners.map((corner) => corner[axis]));
  expect(span(1) / span(0)).toBeCloseTo(2, 0);
  expect(pointsOf(raceways)[0]![1]).toBe(Math.min(...corners.map(([, y]) => y)));
});

test('a lot of 20,000 stalls gives a picture that is small all the same, and an empty one none', () => {
  const stalls = Array.from({ length: 20_000 }, (_, i) => ({
    id: `S${i}`,
    at: [(i % 200) * 9, Math.floor(i / 200) * 40] as const,
    width: 9,
    depth: 18,
    heading: 90,
  }));
  const { stalls: path } = thumbnailOf(toSite({ ...SMALL, stalls }));
  expect(path.length).toBeLessThan(100_000);
  const { drops } = thumbnailOf(toSite({ format: 'overrow/site', version: 1, units: 'm', name: 'empty' }));
  expect(drops).toBe('');
});
