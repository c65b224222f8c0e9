import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import { reachOf } from '../../../routing/reach/reach.ts';
import type { Site, SiteFile, Stall } from '../../../routing/site/site.ts';
import { CAR, charger, drop, row, siteOf, stall } from './sites.ts';

/** Both that are kept. */
const answers = (site: Site) => ({ reach: reachOf(site), findings: reachFindings(site) });

const file = (): Partial<SiteFile> => ({
  ...row(12),
  vehicles: { car: CAR, truck: { ...CAR, length: 19 } },
  aisles: [
    {
      id: 'A1',
      outline: [
        [-20, -24],
        [120, -24],
        [120, 0],
        [-20, 0],
      ],
    },
  ],
  keepouts: [
    {
      id: 'N1',
      outline: [
        [30, -10],
        [36, -10],
        [36, 5],
        [30, 5],
      ],
      blocks: ['cord', 'drop'],
    },
  ],
  rules: { coverage: 1 },
});

/** The same site in objects that nothing has been kept for. */
const anew = (site: Site): Site => structuredClone(site);

const replaced = <T>(list: readonly T[], at: number, item: T): T[] => list.map((one, i) => (i === at ? item : one));

type Edit = (site: Site, pick: number, by: number) => Site;

const EDITS: Record<string, Edit> = {
  'move a drop': (site, pick, by) => {
    if (site.drops.length === 0) return site;
    const i = pick % site.drops.length;
    const one = site.drops[i]!;
    const [x, y, z] = one.retractor ?? one.box;
    return { ...site, drops: replaced(site.drops, i, { ...one, retractor: [x + by, y - by, z] }) };
  },
  'shorten a cord': (site, pick, by) => {
    if (site.drops.length === 0) return site;
    const i = pick % site.drops.length;
    return { ...site, drops: replaced(site.drops, i, { ...site.drops[i]!, cord: 14 + by }) };
  },
  'lower a box': (site, pick, by) => {
    if (site.drops.length === 0) return site;
    const i = pick % site.drops.length;
    const [x, y] = site.drops[i]!.box;
    return { ...site, drops: replaced(site.drops, i, { ...site.drops[i]!, box: [x, y, 6.5 + by / 4] }) };
  },
  'move a stall': (site, pick, by) => {
    const i = pick % site.stalls.length;
    const one = site.stalls[i]!;
    return { ...site, stalls: replaced(site.stalls, i, { ...one, at: [one.at[0] + by, one.at[1] + by] }) };
  },
  'change a vehicle': (site, pick) => {
    const i = pick % site.stalls.length;
    return { ...site, stalls: replaced(site.stalls, i, { ...site.stalls[i]!, vehicle: 'truck' }) };
  },
  'add a stall in front': (site, pick, by) => ({
    ...site,
    stalls: [stall(`X${site.stalls.length}`, [9 * pick, -20 + by], { heading: 30 }), ...site.stalls],
  }),
  'move the column': (site, pick, by) => ({
    ...site,
    columns: site.columns.map((column) => ({ ...column, at: [9 * (pick % 12) + by, 10] })),
  }),
  'add a charger': (site, pick) => ({
    ...site,
    chargers: [
      charger(`N${site.chargers.length}`, site.drops[pick % site.drops.length]!.id, [
        site.stalls[pick % site.stalls.length]!.id,
      ]),
      ...site.chargers,
    ],
  }),
  'drop a charger': (site, pick) => ({ ...site, chargers: site.chargers.filter((_, i) => i !== pick % 12) }),
  'turn the drops about': (site) => ({ ...site, drops: site.drops.toReversed() }),
  'change a rule': (site, _, by) => ({ ...site, rules: { ...site.rules, headClearance: Math.abs(by) } }),
  'change the slack': (site, _, by) => ({ ...site, rules: { ...site.rules, cordSlack: 1 + Math.abs(by) } }),
  'move the aisle': (site, _, by) => ({
    ...site,
    aisles: site.aisles.map((aisle) => ({
      ...aisle,
      outline: aisle.outline.map(([x, y]): [number, number] => [x, y + by]),
    })),
  }),
};

describe('what is kept from one plan to the next', () => {
  test('is what a plan worked from nothing gives, after any edits', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom(...Object.keys(EDITS)),
            fc.nat(30),
            fc.integer({ min: -12, max: 12 }).map((n) => n / 4),
          ),
          { minLength: 1, maxLength: 6 },
        ),
        (edits) => {
          let site = siteOf(structuredClone(file()));
          const sites = [site];
          answers(site);
          for (const [name, pick, by] of edits) {
            site = EDITS[name]!(site, pick, by);
            sites.push(site);
            expect(answers(site)).toEqual(answers(anew(site)));
          }
          // And back again, as by undo.
          for (const before of sites.toReversed()) expect(answers(before)).toEqual(answers(anew(before)));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('is the same object for every charger but the one whose drop has moved', () => {
    const site = siteOf(file());
    const before = reachOf(site);
    const moved = { ...site, drops: replaced(site.drops, 5, { ...site.drops[5]!, cord: 24 }) };
    const after = reachOf(moved);
    expect(after.map((reach, i) => reach === before[i])).toEqual(site.chargers.map((_, i) => i !== 5));
  });

  test('is worked again near a moved stall only', () => {
    const site = siteOf(file());
    const before = reachOf(site);
    const one = site.stalls[2]!;
    const nudged: Stall = { ...one, at: [one.at[0] + 0.25, one.at[1]] };
    const after = reachOf({ ...site, stalls: replaced(site.stalls, 2, nudged) });
    expect(after[2]).not.toBe(before[2]);
    for (let i = 6; i < 12; i++) expect(after[i]).toBe(before[i]);
  });

  test('stands where only labels, gridlines or raceways far above change', () => {
    const site = siteOf(file());
    const before = reachOf(site);
    const after = reachOf({ ...site, gridlines: { x: [{ label: '1', at: 0 }], y: [] }, drops: [...site.drops] });
    after.forEach((reach, i) => {
      expect(reach).toBe(before[i]);
    });
  });
});

test('a charger whose drop is not on the site is a mistake of the program', () => {
  const site = siteOf({ ...file(), chargers: [charger('C1', 'NONE', ['S0'])], drops: [drop('D1', [0, 0, 10])] });
  expect(() => reachOf(site)).toThrow(RangeError);
});
