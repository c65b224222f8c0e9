import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { bidOfRows } from '../../../calc/propose/bid-worth.ts';
import { dropsPart } from '../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../calc/propose/panels/equipment-part.ts';
import { inTheGround } from '../../../calc/propose/panels/panel-source.ts';
import { wholeOf } from '../../../calc/propose/whole.ts';
import { mended } from '../../../calc/study/mended.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows } from '../propose/hand/lots.ts';
import { failing } from '../propose/propose-parts.ts';

type Feeder = NonNullable<SiteFile['feeders']>[number];

const bid = (file: SiteFile): number => bidOfRows(plan(toSite(file)).takeoff, INVENTED_LIST);

/** Sixteen stalls, 420 ft from their source, whose feeders are what their breakers ask for and no more. */
function overDrop(): SiteFile {
  const file = doubleRows({ along: 8, canopies: 1, volts: 208, away: 420 });
  const { file: hung, cords } = dropsPart(file, 1);
  const lot = {
    file,
    had: [],
    way: equipmentPart(hung, { prices: INVENTED_LIST, cords }),
    cords,
    prices: INVENTED_LIST,
  };
  const far = wholeOf(
    lot,
    { isBounded: false, answers: 0, isSearched: false },
    () => {},
    () => true,
  ).file;
  const { rules } = toSite(far);
  return {
    ...far,
    chargers: far.chargers!.map(({ branchDrop: _, ...one }) => one),
    feeders: far.feeders!.map((one) => ({ ...one, conductor: inTheGround(rules, one.breakerAmps) })),
  };
}

const isOver = (file: SiteFile): boolean => failing(file).some((says) => says.includes('from nominal'));

/** The branches of the whole lot held to half a percent less at a time until the total is within its limit. */
function allBranchesHeld(file: SiteFile): SiteFile | null {
  for (let branch = 2.5; branch >= 0.5; branch -= 0.5) {
    const held = { ...file, rules: { ...file.rules, dropLimit: { branch } } };
    if (!isOver(held)) return held;
  }
  return null;
}

test('a way of a study holds the drop as a proposal does: the cheapest on the way to the boxes, the rules as they are', () => {
  const file = overDrop();
  expect(isOver(file)).toBe(true);
  const fresh = new Set(file.feeders!.map(({ id }) => id));
  const made = mended(file, fresh, () => null, INVENTED_LIST);
  if (!made.ok) throw new Error(made.says);
  expect(failing(made.file)).toEqual([]);
  expect(made.file.rules).toEqual(file.rules);
  expect(made.says.some((one) => one.startsWith('Holding the drop adds about $'))).toBe(true);
  const others = allBranchesHeld(file);
  expect(others === null || bid(made.file) < bid(others)).toBe(true);
  // Only what loses most was grown.
  const sizes = (one: SiteFile): readonly string[] => plan(toSite(one)).circuits.map(({ conductor }) => conductor.size);
  const [before, after] = [sizes(file), sizes(made.file)];
  expect(after.filter((size, i) => size === before[i]).length).toBeGreaterThan(0);
});

test('feeders that stand are not made larger: the branches alone hold it where they can', () => {
  const file = overDrop();
  // As much as it can be and still lose too much: what is left is little, and the branches' to hold.
  const stood = [3, 2, 1].flatMap((sets) =>
    ['600', '500', '400', '350', '300', '250'].map((size) => {
      const wide = (one: Feeder): Feeder => ({ ...one, existing: true, conductor: { ...one.conductor, size, sets } });
      return { ...file, feeders: file.feeders!.map(wide) };
    }),
  );
  const stands = stood.find(isOver)!;
  const made = mended(stands, new Set(), () => null, INVENTED_LIST);
  if (!made.ok) throw new Error(made.says);
  expect(made.file.feeders).toEqual(stands.feeders);
  expect(made.file.chargers!.some(({ branchDrop }) => branchDrop !== undefined)).toBe(true);
});
