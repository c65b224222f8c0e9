import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { costOf } from '../../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { fleetYard } from '../../../bench/samples/fleet-yard.ts';

/** Between the two canopies of the yard. */
const MIDDLE = 42;

/** One canopy of the yard with the panel that stands there, and what a hand hung under it. */
function oneCanopy() {
  const { drops, chargers, raceways, pullpoints, days, loads, ...yard } = fleetYard();
  const own = new Set(yard.stalls!.filter(({ at }) => at[1] < MIDDLE).map(({ id }) => id));
  const ground: SiteFile = {
    ...yard,
    stalls: yard.stalls!.filter(({ id }) => own.has(id)),
    columns: yard.columns!.filter(({ at }) => at[1] < MIDDLE),
    members: yard.members!.filter(({ from }) => from[1] < MIDDLE),
    equipment: yard.equipment!.filter(({ id }) => id !== 'P2'),
    feeders: yard.feeders!.filter(({ to }) => to !== 'P2'),
  };
  const hung = chargers!.filter(({ stalls }) => stalls.every((id) => own.has(id)));
  const from = new Set(hung.map(({ drop }) => drop));
  return { ground, hand: { ...ground, drops: drops!.filter(({ id }) => from.has(id)), chargers: hung } };
}

function proposed(file: SiteFile) {
  const next = propose(file, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, answers: 0 }).file;
  const { takeoff, findings } = plan(toSite(next));
  const { cost, price } = costOf(takeoff, INVENTED_LIST, 0);
  return {
    cost,
    price,
    chargers: next.chargers!.length,
    fails: findings.filter(({ severity }) => severity === 'fail').length,
  };
}

/** Routes are sought by a price a foot for both. The whole yard is among the prices of the benchmarks. */
test('drops for slanted stalls under a high canopy cost no more than a hand’s, by their rows or as a bid', () => {
  const { ground, hand } = oneCanopy();
  const [own, drawn] = [proposed(ground), proposed(hand)];
  expect(own).toMatchObject({ chargers: drawn.chargers, fails: 0 });
  // Where both come to the same, rows that are rounded to the cent may differ by some cents.
  expect(own.cost).toBeLessThan(drawn.cost + 1);
  expect(own.price).toBeLessThan(drawn.price + 1);
});
