import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { worthOfRows } from '../../../calc/propose/bid-worth.ts';
import { withChargers } from '../../../calc/propose/drops/chargers.ts';
import { dropsPart } from '../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../calc/propose/panels/equipment-part.ts';
import { answersJudged, racewaysPaid } from '../../../calc/propose/raceways/paid.ts';
import { racewaysPart } from '../../../calc/propose/raceways/raceways-part.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { HANDS } from './hand/hands.ts';

/** The hand's panel and drops, with the feeders' raceways only. */
function unrouted(): SiteFile {
  const { hand } = HANDS['8']();
  return { ...hand, raceways: hand.raceways!.filter(({ place }) => place === 'underground') };
}

function branchesOf(file: SiteFile, answers: number) {
  const laid = racewaysPart(
    file,
    INVENTED_LIST,
    () => {},
    () => true,
    { answers },
  );
  const { takeoff, findings } = plan(toSite(laid.file));
  return {
    dollars: costOf(takeoff, INVENTED_LIST, 0).bySystem.branches,
    fails: findings.filter(({ severity }) => severity === 'fail').length,
  };
}

test('a longer search never gives dearer branches, as the plan prices them, nor one that fails more', () => {
  const lot = unrouted();
  const told = [0, 5, 20, 60].map((answers) => branchesOf(lot, answers));
  expect(told.map(({ fails }) => fails)).toEqual([0, 0, 0, 0]);
  for (const [i, { dollars }] of told.slice(1).entries()) expect(dollars).toBeLessThanOrEqual(told[i]!.dollars);
});

/** Proposed panels, unrouted. */
function withPanels(name: '8' | '16'): SiteFile {
  const drops = dropsPart(HANDS[name]().ground, 1);
  const shape = { more: -1500, isShared: true };
  const { file, fromOf } = equipmentPart(drops.file, { prices: INVENTED_LIST, cords: drops.cords, shape });
  return withChargers(file, drops.cords, fromOf);
}

test.each([
  ['8', 1],
  ['16', 2],
] as const)(
  '%s stalls on %i or more panels: what is searched by is what is paid, but for what no routes change',
  (name, panels) => {
    const charged = withPanels(name);
    const { judge } = racewaysPaid(INVENTED_LIST, 1, null);
    const told = [0, 3, 20].map((answers) => {
      const { file } = racewaysPart(
        charged,
        INVENTED_LIST,
        () => {},
        () => true,
        { answers },
      );
      const site = toSite(file);
      const from = site.chargers.at(-1)!.from;
      const own = new Set(site.chargers.filter((one) => one.from === from).map(({ id }) => id));
      expect(new Set(site.chargers.map((one) => one.from)).size).toBeGreaterThanOrEqual(panels);
      const bid = costOf(plan(site).takeoff, INVENTED_LIST, 0).price;
      const whole = worthOfRows(plan(site).takeoff, INVENTED_LIST);
      const { cost, due } = judge(site, from, own, true);
      return { bid, whole, due, rest: whole - cost };
    });
    expect(new Set(told.map(({ whole }) => whole)).size).toBeGreaterThan(name === '16' ? 1 : 0);
    for (const { rest } of told) expect(Math.abs(rest - told[0]!.rest)).toBeLessThan(0.07);
    // And what is told to be due is the bid of the whole lot, whole days and all.
    for (const { bid, due } of told) expect(Math.abs(due! - bid)).toBeLessThan(0.07);
  },
);

test('a large lot has no more planned and priced than a small one', () => {
  for (const chargers of [1, 24, 48, 240, 1200])
    expect(answersJudged(chargers) * chargers).toBeLessThanOrEqual(answersJudged(24) * 24);
  expect(answersJudged(24)).toBeGreaterThanOrEqual(200);
});
