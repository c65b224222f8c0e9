import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { holdsOf, mend, partOf } from '../../../../calc/propose/anew/mend.ts';
import { mendWords } from '../../../../calc/propose/anew/mend-words.ts';
import { proposeAnew } from '../../../../calc/propose/anew/propose-anew.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { startSite } from '../../../../calc/propose/start-site.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';

const LOT = propose(startSite({ name: 'Eight', stalls: 8, rows: 2 }), {
  what: 'all',
  cordsADrop: 1,
  prices: INVENTED_LIST,
}).file;

/** The lot with one drop moved, feet. */
const moved = (which: number, dx: number, dy: number): SiteFile => ({
  ...LOT,
  drops: LOT.drops!.map((drop, i) => {
    if (i !== which) return drop;
    const to = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [x + dx, y + dy, z];
    return { ...drop, box: to(drop.box), ...(drop.retractor && { retractor: to(drop.retractor) }) };
  }),
});

const runsOf = (file: SiteFile, without: ReadonlySet<string>): string =>
  JSON.stringify(plan(toSite(file)).runs.filter(({ charger }) => !without.has(charger)));

test('what nothing broke is not mended', () => {
  expect(mend(LOT, LOT, INVENTED_LIST)).toBeNull();
  expect(mend(LOT, null, INVENTED_LIST)).toBeNull();
});

describe('a drop that was moved off its raceway', () => {
  const file = moved(2, 0, 7);
  const made = mend(file, LOT, INVENTED_LIST)!;
  const charger = LOT.chargers!.find(({ drop }) => drop === LOT.drops![2]!.id)!.id;

  test('is what is broken, and nothing else', () => {
    expect(made.broken.chargers).toEqual([charger]);
    expect(made.left.fails).toBeGreaterThan(0);
  });

  test('is mended, and both prices are those of the sites', () => {
    const { mended, left } = made;
    expect(mended!.fails).toBe(0);
    expect(mended!.price).toBe(alternativeOf('', toSite(mended!.file), INVENTED_LIST).cost.price);
    expect(left.price).toBe(alternativeOf('', toSite(file), INVENTED_LIST).cost.price);
    const words = mendWords(made, (amount) => `$${amount.toFixed(2)}`);
    expect(words).toContain(`Left as it is drawn: $${left.price.toFixed(2)}`);
    expect(words).toContain(`Mended: $${mended!.price.toFixed(2)}`);
  });

  test('what failed before the move is not mended with it', () => {
    // Another drop far off, long before.
    const older = moved(5, 0, 60);
    const both: SiteFile = {
      ...older,
      drops: older.drops!.map((drop, i) => (i === 2 ? file.drops![2]! : drop)),
    };
    const own = mend(both, older, INVENTED_LIST)!;
    expect(own.broken.chargers).toEqual([charger]);
    expect(own.mended!.fails).toBeGreaterThan(0);
    expect(own.mended!.file.drops![5]).toEqual(older.drops![5]);
  });
});

test('a mend never costs more than the broken part proposed anew, and leaves every other run as it was', () => {
  let counted = 0;
  fc.assert(
    fc.property(
      fc.nat(LOT.drops!.length - 1),
      fc.integer({ min: -12, max: 12 }),
      fc.integer({ min: -9, max: 9 }),
      (which, dx, dy) => {
        const file = moved(which, dx, dy);
        const made = mend(file, LOT, INVENTED_LIST);
        if (made === null) return;
        const broken = new Set(made.broken.chargers);
        const site = toSite(file);
        if (made.mended === null) return;
        counted += 1;
        expect(made.mended.fails).toBeLessThan(made.left.fails);
        expect(runsOf(made.mended.file, broken)).toBe(runsOf(file, broken));
        const wish = {
          what: 'all',
          scope: partOf(site, broken),
          keep: new Set<string>(),
          prices: INVENTED_LIST,
        } as const;
        const whole = proposeAnew(file, { ...wish, cordsADrop: holdsOf(site, broken) });
        if (whole.after.fails <= made.mended.fails && runsOf(whole.file, broken) === runsOf(file, broken))
          expect(made.mended.price).toBeLessThanOrEqual(whole.after.price + 0.005);
      },
    ),
    { numRuns: 12 },
  );
  expect(counted).toBeGreaterThan(3);
});
