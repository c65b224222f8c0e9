import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows } from './hand/lots.ts';

const LOT = doubleRows({ along: 4, canopies: 1, volts: 208, away: 40 });

/** The proposal of a lot that is stopped once it has asked so often whether it may go on. */
function stoppedAfter(asked: number, answers?: number, lot: SiteFile = LOT) {
  let left = asked;
  const wholes: SiteFile[] = [];
  const { file } = propose(
    lot,
    { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, ...(answers !== undefined && { answers }) },
    () => {},
    (soFar) => wholes.push(soFar.file),
    () => left-- > 0,
  );
  return { file, wholes, used: asked - left };
}

test.each([0, 40, 400])('stopped after %i steps it is whole all the same, and fails nothing', (asked) => {
  const { file } = stoppedAfter(asked);
  const { runs, findings } = plan(toSite(file));
  expect(runs.map(({ ok }) => ok)).toEqual(LOT.stalls!.map(() => true));
  expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
});

/** What a plan of it comes to as a bid. */
function comesTo(file: SiteFile): { readonly dollars: number; readonly fails: number } {
  const { takeoff, findings } = plan(toSite(file));
  return {
    dollars: costOf(takeoff, INVENTED_LIST, 0).price,
    fails: findings.filter(({ severity }) => severity === 'fail').length,
  };
}

/** Under canopies: with panels near the source, and with one so far off that its feeder is widened. */
const LOTS = [
  doubleRows({ along: 4, canopies: 1, volts: 208, away: 40 }),
  doubleRows({ along: 5, canopies: 1, volts: 208, away: 40 }),
  doubleRows({ along: 3, canopies: 1, volts: 208, away: 600 }),
];

test('a longer search never gives a dearer answer than a shorter one, nor one that fails more, wherever both are stopped', () => {
  /** Of the questions of a whole search, most near its beginning; without answers that are judged, with a few, and all. */
  const stops = fc.record({
    lot: fc.constantFrom(...LOTS),
    answers: fc.constantFrom(0, 12, undefined),
    shares: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 2 }),
  });
  fc.assert(
    fc.property(stops, ({ lot, answers, shares }) => {
      const whole = stoppedAfter(Number.MAX_SAFE_INTEGER, answers, lot);
      const counts = [0, ...shares.map((share) => Math.round(whole.used * share ** 2)).sort((a, b) => a - b)];
      const told = [...counts.map((asked) => stoppedAfter(asked, answers, lot)), whole].map(({ file }) =>
        comesTo(file),
      );
      for (const [i, { dollars, fails }] of told.slice(1).entries()) {
        expect(fails).toBeLessThanOrEqual(told[i]!.fails);
        if (fails === told[i]!.fails) expect(dollars).toBeLessThanOrEqual(told[i]!.dollars + 0.005);
      }
    }),
    { numRuns: 3 },
  );
});

test('more answers that are planned and priced never give what is dearer', () => {
  const dollars = (answers: number): number => comesTo(stoppedAfter(Number.MAX_SAFE_INTEGER, answers).file).dollars;
  expect(dollars(4)).toBeLessThanOrEqual(dollars(0) + 0.005);
});

test('stopped at once it asks no more than a few times, and the last that was told as ready is what is given', () => {
  const { file, wholes, used } = stoppedAfter(0);
  expect(used).toBeLessThan(30);
  expect(wholes.at(-1)).toEqual(file);
  expect(wholes[0]!.raceways).toBeUndefined();
});

/** A lot with panels and drops, of which nothing has a run yet. */
const unrouted = ({ raceways: _, pullpoints: __, ...file }: SiteFile): SiteFile => file;

test('nor does a longer search for raceways alone', () => {
  const lots = LOTS.map((lot) => unrouted(stoppedAfter(0, 0, lot).file));
  const alone = (lot: SiteFile, asked: number, answers?: number) => {
    let left = asked;
    const wish = { what: 'raceways', cordsADrop: 1, prices: INVENTED_LIST } as const;
    const { file } = propose(
      lot,
      { ...wish, ...(answers !== undefined && { answers }) },
      () => {},
      () => {},
      () => left-- > 0,
    );
    return { ...comesTo(file), used: asked - left };
  };
  fc.assert(
    fc.property(
      fc.constantFrom(...lots),
      fc.constantFrom(0, 12),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (lot, answers, share) => {
        const whole = alone(lot, Number.MAX_SAFE_INTEGER, answers);
        const told = [alone(lot, 0, answers), alone(lot, Math.round(whole.used * share ** 2), answers), whole];
        for (const [i, { dollars, fails }] of told.slice(1).entries()) {
          expect(fails).toBeLessThanOrEqual(told[i]!.fails);
          if (fails === told[i]!.fails) expect(dollars).toBeLessThanOrEqual(told[i]!.dollars + 0.005);
        }
      },
    ),
    { numRuns: 6 },
  );
});
