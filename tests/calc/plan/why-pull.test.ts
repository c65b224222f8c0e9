import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { hardestPull } from '../../../calc/steel/hung-drops.ts';
import { whyPull } from '../../../calc/why/why-pull.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

test('the steps of a pull end at the pull, and its parts make it up', () => {
  const { site } = plannedSample('library-lot');
  const { reach, hung } = plan(site);
  let slanting = 0;
  for (const drop of site.drops)
    for (const charger of site.chargers.filter((one) => one.drop === drop.id)) {
      const own = reach.filter((one) => one.charger === charger.id);
      const pull = hardestPull(drop, charger, own, site.rules)!;
      const steps = whyPull(drop, charger, own, site.rules);
      expect(steps.map(({ find }) => find)).toEqual([
        'weight of the cord',
        'pull sideways',
        'pull down',
        'pull in the cord',
      ]);
      expect(steps.at(-1)!.result).toBe(pull.pounds);
      expect(Math.hypot(pull.down, pull.sideways)).toBeCloseTo(pull.pounds, 9);
      if (pull.sideways > 0) slanting++;
    }
  expect(slanting).toBeGreaterThan(3);
  // On the steel the sideways pull stands with its direction: away from the retractor, to the side of its stall.
  const pulled = hung.flatMap(({ points }) => points.filter(({ sideways }) => sideways !== undefined));
  expect(pulled).toHaveLength(slanting);
  for (const { heading } of pulled) expect(heading).toBeGreaterThanOrEqual(0);
});
