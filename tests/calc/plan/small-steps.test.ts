import { expect, test } from 'vitest';
import type { EquipmentBranches } from '../../../calc/branches/equipment-branches.ts';
import { branchCounts } from '../../../calc/checks/counts.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { copied } from '../../../routing/kept/changed-places.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { makeLot } from '../../bench/make-lot.ts';

/** An object that counts how often one of its fields is read. */
function watched<T extends object>(thing: T, field: keyof T): { readonly thing: T; readonly reads: () => number } {
  let reads = 0;
  const value = thing[field];
  const copy = Object.defineProperty({ ...thing }, field, {
    enumerable: true,
    get: () => {
      reads++;
      return value;
    },
  });
  return { thing: copy, reads: () => reads };
}

/** The site in feet, and after moving its last drop. */
const lot = toSite(makeLot({ name: 'made lot', stalls: 400 }));

test('a step of a drag does not count the branches of equipment again where nothing changed', () => {
  const [first, ...others] = plan(lot).branches;
  const { thing, reads } = watched<EquipmentBranches>(first!, 'homeRuns');
  const before = branchCounts([thing, ...others]);
  expect(reads()).toBeGreaterThan(0);
  const once = reads();
  expect(branchCounts([thing, ...others.slice(0, -1), { ...others.at(-1)! }])).toEqual(before);
  expect(reads()).toBe(once);
});

test('a step of a drag does not look for pedestals among drops that stayed', () => {
  const { thing, reads } = watched<Drop>(lot.drops[0]!, 'mount');
  const drops = [thing, ...lot.drops.slice(1)];
  const site = { ...lot, drops };
  plan(site);
  expect(reads()).toBeGreaterThan(0);
  const step = (feet: number): void => {
    const last = drops.at(-1)!;
    const [x, y, z] = last.box;
    const moved = [...drops.slice(0, -1), { ...last, box: [x, y - feet, z] as const }];
    plan({ ...site, drops: copied(moved, drops, [drops.length - 1]) });
  };
  step(0.25);
  const once = reads();
  step(0.5);
  expect(reads()).toBe(once);
});
