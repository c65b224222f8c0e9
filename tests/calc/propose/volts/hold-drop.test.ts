import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { bidOfRows } from '../../../../calc/propose/bid-worth.ts';
import { dropsPart } from '../../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../../calc/propose/panels/equipment-part.ts';
import { type Whole, wholeOf } from '../../../../calc/propose/whole.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { doubleRows } from '../hand/lots.ts';
import { failing } from '../propose-parts.ts';

/** Panels as priced, and raceways as a search begins with them: what the drop asks for is the same. */
function laid(file: SiteFile): Whole {
  const { file: hung, cords } = dropsPart(file, 1);
  const way = equipmentPart(hung, { prices: INVENTED_LIST, cords });
  return wholeOf(
    { file, had: [], way, cords, prices: INVENTED_LIST },
    { isBounded: false, answers: 0, isSearched: false },
    () => {},
    () => true,
  );
}

const dollars = (file: SiteFile): number => bidOfRows(plan(toSite(file)).takeoff, INVENTED_LIST);

/** The same lot with the conductors that its breakers ask for, and as many more in parallel as hold the drop by themselves. */
function bySets(file: SiteFile, least: SiteFile): SiteFile {
  const { chargers, feeders } = file;
  const sized = new Map(least.feeders!.map(({ breakerAmps, conductor }) => [breakerAmps, conductor]));
  let next: SiteFile = {
    ...file,
    chargers: chargers!.map(({ branchDrop: _, ...one }) => one),
    feeders: feeders!.map((one) => ({ ...one, conductor: sized.get(one.breakerAmps)! })),
  };
  for (let sets = 0; sets < 16; sets++) {
    const over = new Set(
      plan(toSite(next)).findings.flatMap(({ rule, about }) => (rule === 'total-drop' ? [about.at(-1)] : [])),
    );
    if (over.size === 0) break;
    next = {
      ...next,
      feeders: next.feeders!.map((one) =>
        over.has(one.to) ? { ...one, conductor: { ...one.conductor, sets: one.conductor.sets + 1 } } : one,
      ),
    };
  }
  return next;
}

describe('a lot so far from its source that the drop decides what its feeders cost', () => {
  const { file, parts } = laid(doubleRows({ along: 12, canopies: 1, volts: 208, away: 700 }));
  const near = laid(doubleRows({ along: 12, canopies: 1, volts: 208, away: 40 }));
  const says = parts.flatMap((part) => part.says);

  test('fails in nothing, and costs far less than with more conductors in parallel alone', () => {
    expect(failing(file)).toEqual([]);
    const sets = bySets(file, near.file);
    expect(failing(sets)).toEqual([]);
    const [held, free] = [
      dollars(sets),
      dollars({
        ...sets,
        feeders: near.file.feeders!.map((one, i) => ({ ...file.feeders![i]!, conductor: one.conductor })),
      }),
    ];
    // What holding the drop adds is less than seven tenths of what it would add.
    expect(dollars(file) - free).toBeLessThan(0.7 * (held - free));
  });

  test('its branches lose less than the rule asks, by larger conductors of those alone that would lose more', () => {
    const limits = new Set(file.chargers!.map(({ branchDrop }) => branchDrop));
    expect(limits.size).toBe(1);
    const [limit] = limits as Set<number>;
    expect(limit).toBeLessThan(3);
    const { circuits } = plan(toSite(file));
    const before = plan(toSite({ ...file, chargers: file.chargers!.map(({ branchDrop: _, ...one }) => one) })).circuits;
    const grown = circuits.filter(({ conductor }, i) => conductor.size !== before[i]!.conductor.size);
    expect(grown.length).toBeGreaterThan(0);
    expect(grown.length).toBeLessThan(circuits.length);
    for (const { charger } of grown)
      expect(before.find((one) => one.charger === charger)!.branchDropPercent).toBeGreaterThan(limit!);
  });

  test('says what is larger, what branches are held to, and what that adds to the price', () => {
    expect(says.some((one) => /^Branches out of P1.* are held to a drop of [\d.]+%/.test(one))).toBe(true);
    const told = says.find((one) => one.startsWith('Holding the drop adds about $'))!;
    const least = bySets(file, near.file);
    const free = dollars({
      ...least,
      feeders: file.feeders!.map((one, i) => ({ ...one, conductor: near.file.feeders![i]!.conductor })),
    });
    const added = Number(told.replace(/\D/g, ''));
    expect(added / (dollars(file) - free)).toBeCloseTo(1, 1);
  });
});
