import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { answersJudged } from '../../../calc/propose/paid.ts';
import { racewaysPart } from '../../../calc/propose/raceways-part.ts';
import { costOf } from '../../../calc/takeoff/cost.ts';
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

test('a large lot has no more planned and priced than a small one', () => {
  for (const chargers of [1, 24, 48, 240, 1200])
    expect(answersJudged(chargers) * chargers).toBeLessThanOrEqual(answersJudged(24) * 24);
  expect(answersJudged(24)).toBeGreaterThanOrEqual(200);
});
