import { expect, test } from 'vitest';
import { toSite } from '../../../../routing/site/to-site.ts';
import { arrayWays } from '../../../../web/panels/selection/array-ways.ts';
import { SMALL } from '../../document/small-site.ts';

const site = toSite({ ...SMALL, gridlines: { x: [{ label: '1', at: 0 }], rotation: -30 } });

test('an array is offered along the row of its stalls, or of those that its drops serve, before all else', () => {
  for (const ref of [
    { list: 'stalls', id: 'S09' },
    { list: 'drops', id: 'D1' },
  ] as const)
    expect(arrayWays(site, [ref])[0]).toMatchObject({ name: 'the row' });
  expect(arrayWays(site, [{ list: 'stalls', id: 'S09' }])).toEqual([
    { name: 'the row', degrees: 0, next: 9 },
    { name: 'the gridlines', degrees: 330, next: null },
  ]);
});

test('along a raceway, whose length is no spacing; the gridlines where they are turned; the sheet at last', () => {
  const ways = arrayWays(site, [{ list: 'raceways', id: site.raceways[0]!.id }]);
  expect(ways.map(({ name }) => name)).toEqual(expect.arrayContaining(['the raceway', 'the gridlines']));
  expect(ways.find(({ name }) => name === 'the raceway')?.next).toBeNull();
  expect(arrayWays(toSite(SMALL), []).map(({ name }) => name)).toEqual(['the sheet']);
});
