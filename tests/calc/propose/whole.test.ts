import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { dropsPart } from '../../../calc/propose/drops/drops-part.ts';
import { equipmentPart } from '../../../calc/propose/panels/equipment-part.ts';
import { inTheGround } from '../../../calc/propose/panels/panel-source.ts';
import { racewaysPaid } from '../../../calc/propose/raceways/paid.ts';
import { type SetLot, type Whole, wholeOf, withNarrower } from '../../../calc/propose/whole.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows } from './hand/lots.ts';

function setLot(file: SiteFile): SetLot {
  const { file: hung, cords } = dropsPart(file, 1);
  // A panel for each canopy.
  const way = equipmentPart(hung, { prices: INVENTED_LIST, cords, shape: { more: -1500, isShared: true } });
  return { file, had: [], way, cords, prices: INVENTED_LIST };
}

const laid = (lot: SetLot, isSearched: boolean): Whole =>
  wholeOf(
    lot,
    { isBounded: false, answers: 0, isSearched },
    () => {},
    () => true,
  );

/** With so many more conductors in parallel in the feeder of a panel. */
const wider = (whole: Whole, panel: string, more: number): Whole => ({
  ...whole,
  file: {
    ...whole.file,
    feeders: whole.file.feeders!.map((one) =>
      one.to === panel ? { ...one, conductor: { ...one.conductor, sets: one.conductor.sets + more } } : one,
    ),
  },
});

/** The same raceways, told from others by the end that their paths begin at. */
const drawnBackwards = (whole: Whole): Whole => ({
  ...whole,
  proposal: {
    ...whole.proposal,
    raceways: whole.proposal.raceways.map((one) => ({ ...one, path: one.path.toReversed() })),
  },
});

/** Raceways laid for the branches of a panel, in any order. */
const piecesOf = ({ proposal }: Whole, panel: string): readonly string[] =>
  proposal.raceways.flatMap(({ of, path }) => (of === panel ? [JSON.stringify(path)] : [])).sort();

test('where a search asks a wider feeder for a panel than what it began with, that panel keeps the raceways it began with', () => {
  const lot = setLot(doubleRows({ along: 5, canopies: 2, volts: 208, away: 40 }));
  const sought = laid(lot, true);
  const start = drawnBackwards(laid(lot, false));
  const panels = [...new Set(sought.file.chargers!.map(({ from }) => from))];
  expect(panels.length).toBeGreaterThanOrEqual(2);
  const [panel] = panels as [string];
  expect(withNarrower(lot, sought, start)).toBeNull();
  const mixed = withNarrower(lot, wider(sought, panel, 1), start)!;
  for (const id of panels) expect(piecesOf(mixed, id)).toEqual(piecesOf(id === panel ? start : sought, id));
  // Feeders are as wide as the branches ask for that it has now, and every charger has its run.
  expect(mixed.file.feeders).toEqual(start.file.feeders);
  expect(mixed.fails).toBe(0);
  expect(mixed.dollars).toBeGreaterThan(0);
});

test('branches for which the feeders as they are would be too narrow fail, however little they cost', () => {
  const lot = setLot(doubleRows({ along: 8, canopies: 1, volts: 208, away: 600 }));
  const whole = laid(lot, false);
  const site = toSite(whole.file);
  const panel = site.chargers[0]!.from;
  const own = new Set(site.chargers.map(({ id }) => id));
  const narrow = {
    ...site,
    feeders: site.feeders.map((one) => ({ ...one, conductor: inTheGround(site.rules, one.breakerAmps) })),
  };
  const judge = (held?: typeof site) => racewaysPaid(INVENTED_LIST, 1, null, held).judge(site, panel, own, true);
  expect(narrow.feeders).not.toEqual(site.feeders);
  expect(judge(narrow).fails()).toBeGreaterThan(judge(site).fails());
  expect(judge(narrow).cost).toBe(judge().cost);
  // Branches that are to lose less cost what that takes, also where they are asked about without it.
  const free = { ...site, chargers: site.chargers.map(({ branchDrop: _, ...one }) => one) };
  const asked = (held?: typeof site) => racewaysPaid(INVENTED_LIST, 1, null, held).judge(free, panel, own, true);
  expect(asked(site).cost).toBe(judge(site).cost);
  expect(asked().cost).toBeLessThan(judge(site).cost);
  expect(asked(site).fails()).toBe(0);
});
