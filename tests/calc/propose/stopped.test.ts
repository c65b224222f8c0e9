import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/cost.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows } from './hand/lots.ts';

const LOT = doubleRows({ along: 4, canopies: 1, volts: 208, away: 40 });

/** The proposal of a lot that is stopped once it has asked so often whether it may go on. */
function stoppedAfter(asked: number, answers?: number) {
  let left = asked;
  const wholes: SiteFile[] = [];
  const { file } = propose(
    LOT,
    { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, ...(answers !== undefined && { answers }) },
    () => {},
    (soFar) => wholes.push(soFar.file),
    () => left-- > 0,
  );
  return { file, wholes, used: asked - left };
}

test.each([0, 40, 400])('stopped after %i steps it is whole all the same, and fails nothing', (asked) => {
  const { file } = stoppedAfter(asked);
  const { runs, findings } = plan(toSite(file));
  expect(runs.map(({ ok }) => ok)).toEqual(LOT.stalls!.map(() => true));
  expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
});

test('a longer search never gives a dearer answer than a shorter one, as the plan prices it', () => {
  const dollars = (asked: number, answers?: number): number => {
    const { file } = stoppedAfter(asked, answers);
    return costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;
  };
  const atOnce = dollars(0, 0);
  /** Without answers that are planned and priced, as on a lot that is too large for them, and with a few. */
  const byFeet = [40, 400, 4000, Number.POSITIVE_INFINITY].map((asked) => dollars(asked, 0));
  for (const one of byFeet) expect(one).toBeLessThanOrEqual(atOnce + 0.005);
  expect(byFeet.at(-1)).toBeLessThanOrEqual(Math.min(...byFeet) + 0.005);
  expect(dollars(Number.POSITIVE_INFINITY, 4)).toBeLessThanOrEqual(byFeet.at(-1)! + 0.005);
});

test('stopped at once it asks no more than a few times, and the last that was told as ready is what is given', () => {
  const { file, wholes, used } = stoppedAfter(0);
  expect(used).toBeLessThan(30);
  expect(wholes.at(-1)).toEqual(file);
  expect(wholes[0]!.raceways).toBeUndefined();
});
