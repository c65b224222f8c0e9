import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { costOf } from '../../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { hospitalLot } from '../../../bench/samples/hospital-lot.ts';

function figures(file: SiteFile) {
  const { findings, takeoff } = plan(toSite(file));
  const { cost, price, missing } = costOf(takeoff, INVENTED_LIST, 0);
  return { cost, price, missing, fails: findings.flatMap(({ severity, says }) => (severity === 'fail' ? [says] : [])) };
}

/** By a price a foot alone: to judge answers by their plans takes four times as long, and saves a thousandth. */
test('for the stripped hospital lot with its switchboards what is proposed is no dearer than what was drawn there, by its rows or as a bid', () => {
  const hand = hospitalLot();
  const { drops, chargers, raceways, pullpoints, ...ground } = hand;
  const { file } = propose(ground, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, isBounded: false });
  const [bare, drawn, proposed] = [ground, hand, file].map(figures) as [
    ReturnType<typeof figures>,
    ReturnType<typeof figures>,
    ReturnType<typeof figures>,
  ];
  expect(file.chargers).toHaveLength(chargers!.length);
  // A column stands in front of a switchboard, whatever is proposed.
  expect(proposed).toMatchObject({ missing: [], fails: bare.fails });
  expect(proposed.cost).toBeLessThanOrEqual(drawn.cost);
  expect(proposed.price).toBeLessThanOrEqual(drawn.price);
});
