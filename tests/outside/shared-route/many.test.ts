import { expect, test } from 'vitest';
import { sharedRoute } from '../../../routing/propose/shared-route.ts';
import { routeLot } from '../../bench/route-lot.ts';

// 240 circuits on one root. The best known are of long runs of an annealed search (300,000 rounds, 50 CPU seconds); a
// run of a few seconds comes within 1 % and certifies 5 % with steps enough (the benchmark says); what is tried here is
// a short one.
test.each([
  { price: { raceway: 6, conductor: 6, conduit: 4, circuitsPerConduit: 3 }, best: 1_626_805.6 },
  { price: { raceway: 22, conductor: 5, conduit: 8, circuitsPerConduit: 3 }, best: 1_948_878.2 },
])('240 circuits on one root, within 2 % of the best known after a short search', ({ price, best }) => {
  const lot = routeLot({ rows: 20, columns: 52, circuits: 240, price, seed: 1 });
  const { cost, bound, paths } = sharedRoute(lot, { rounds: 3000, steps: 40 });
  expect(cost).toBeLessThan(1.02 * best);
  expect(bound).toBeLessThanOrEqual(best);
  expect(bound).toBeGreaterThan(0.8 * best);
  for (const [k, path] of paths.entries()) {
    expect([path[0], path.at(-1)]).toEqual([lot.root, lot.terminals[k]]);
    expect(new Set(path).size).toBe(path.length);
  }
});
