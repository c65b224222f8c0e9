import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BranchOhms } from '../../../calc/branches/equipment-branches.ts';
import { feedsOf } from '../../../calc/branches/feeds.ts';
import { totalDropFindings } from '../../../calc/checks/supply/volts/total-drop.ts';
import { supplyOf } from '../../../calc/supply/supply.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import { chargers, feeder, panel, siteOf, source } from './small-site.ts';

type Branches = readonly (BranchOhms | null)[];

const twoPanels = (total: number): Site =>
  siteOf({
    equipment: [source(208), panel('P'), panel('Q')],
    feeders: [feeder('SVC', 'P'), feeder('SVC', 'Q', { length: 300 })],
    chargers: [...chargers('P', 2), ...chargers('Q', 3), ...chargers('P', 3)].map((one, i) => ({
      ...one,
      id: `EV${i}`,
    })),
    rules: { dropLimit: { total } },
  });

/** Every charger keeps its run, so that the supply stays as it is and only the branches change. */
const dropsOf = (site: Site, branches: Branches): readonly Finding[] => {
  const runs = site.chargers.map(({ id }) => ({ charger: id, length: 90 }) as Run);
  const { boxSupply } = supplyOf(site, runs, branches, NEC_2023);
  const { places } = feedsOf(site.chargers).partition;
  return totalDropFindings(
    site,
    boxSupply,
    places.map((own) => own.map((place) => branches[place]!)),
  );
};

test('branches changed one after the other leave what a site read anew is told', () => {
  const branch = fc.option(fc.record({ r: fc.double({ min: 0.01, max: 0.6, noNaN: true }), x: fc.constant(0.005) }));
  const step = fc.record({ place: fc.nat(7), branch });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), fc.constantFrom(3, 5, 8), (steps, limit) => {
      const site = twoPanels(limit);
      let branches: Branches = site.chargers.map(() => ({ r: 0.05, x: 0.005 }));
      for (const { place, branch } of steps) {
        branches = branches.map((own, i) => (i === place ? branch : own));
        expect(dropsOf(site, branches)).toEqual(dropsOf(twoPanels(limit), branches));
      }
    }),
    { numRuns: 60 },
  );
});

test('a branch that stays within the limit leaves the findings the objects that they were', () => {
  const site = twoPanels(5);
  const rest = site.chargers.map((_, i) => ({ r: i === 7 ? 0.6 : 0.05, x: 0 }));
  const at = (first: number): Branches => [{ r: first, x: 0 }, ...rest.slice(1)];
  const [before] = dropsOf(site, at(0.05));
  expect(before!.about).toEqual(['EV7', 'P']);
  expect(dropsOf(site, at(0.06))[0]).toBe(before);
  expect(dropsOf(site, at(0.7))[0]!.about).toEqual(['EV0', 'EV7', 'P']);
});
