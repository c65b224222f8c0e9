import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { costOf } from '../../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { HANDS } from './hands.ts';

function figures(file: SiteFile) {
  const { findings, takeoff } = plan(toSite(file));
  const { cost, price, missing } = costOf(takeoff, INVENTED_LIST, 0);
  return {
    cost,
    price,
    missing,
    fails: findings.filter(({ severity }) => severity === 'fail').map(({ says }) => says),
  };
}

/** Of the answers that a proposal judges only a few: a longer search is held to be no dearer elsewhere. */
const all = (file: SiteFile, cordsADrop = 1): SiteFile =>
  propose(file, { what: 'all', cordsADrop, prices: INVENTED_LIST, answers: 12 }).file;

/** What is proposed for each lot, worked once for all tests that ask. */
const known = new Map<string, SiteFile>();
function proposedFor(name: keyof typeof HANDS): SiteFile {
  const file = known.get(`${name}`) ?? all(HANDS[name]().ground);
  known.set(`${name}`, file);
  return file;
}

describe.each(Object.keys(HANDS) as (keyof typeof HANDS)[])('%s stalls', (name) => {
  const { ground, hand } = HANDS[name]();
  const drawn = figures(hand);

  test('a careful hand’s layout fails nothing, and is no cheaper than what is proposed from the bare ground, by its rows or as a bid', () => {
    expect(drawn).toMatchObject({ missing: [], fails: [] });
    const file = proposedFor(name);
    const proposed = figures(file);
    expect(proposed.fails).toEqual([]);
    expect(file.chargers).toHaveLength(hand.chargers!.length);
    expect(proposed.cost).toBeLessThanOrEqual(drawn.cost);
    expect(proposed.price).toBeLessThanOrEqual(drawn.price);
  });

  if (`${name}` === '16' || name === '20 in two single rows')
    test('nor than panels and raceways for the hand’s own drops', () => {
      const { drops } = hand;
      const { cost, price } = figures(all({ ...ground, drops: drops! }));
      expect([cost < drawn.cost, price < drawn.price]).toEqual([true, true]);
    });
});

test('drops that could hold more cords than they get ask for no more panel', () => {
  const { ground } = HANDS['24']();
  const [one, four] = [proposedFor(24), all(ground, 4)];
  const mains = (file: SiteFile): number => (file.equipment ?? []).reduce((sum, { mainAmps = 0 }) => sum + mainAmps, 0);
  expect(mains(four)).toBeLessThanOrEqual(mains(one));
  expect(figures(four).cost).toBeLessThan(figures(one).cost);
});
