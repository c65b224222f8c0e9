import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { cutPlan } from '../../../calc/takeoff/cutting/cut-plan.ts';
import { firstFit } from '../../../calc/takeoff/cutting/fit.ts';
import { fitMany } from '../../../calc/takeoff/cutting/fit-many.ts';
import { problemOf } from '../../../calc/takeoff/cutting/stock-problem.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';
import { anyLot } from '../branches/lots.ts';
import { anySupply } from '../supply/devices/any-supply.ts';
import { siteOf } from '../supply/small-site.ts';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Sticks and reels of a takeoff are those of its cutting plan, and what is bought covers what is cut, waste in. */
function expectOneCount(planned: Plan): number {
  const groups = cutPlan(planned);
  const stockRows = planned.takeoff.filter(({ item }) => item === 'raceway stick' || item === 'reel');
  const inStock = groups.filter(({ stock }) => stock > 0);
  expect(stockRows.map(({ quantity }) => quantity).sort()).toEqual(
    inStock.map(({ stocks, spare }) => stocks.length + spare).sort(),
  );
  const bought = sum(
    planned.takeoff.map((row) =>
      row.item === 'threaded rod' || row.item === 'stringer' ? 0 : (row.bought?.quantity ?? 0),
    ),
  );
  expect(bought).toBeCloseTo(sum(groups.map((group) => group.bought)), 6);
  for (const row of planned.takeoff) {
    if (row.bought === undefined) continue;
    const net = sum(row.parts.map(({ quantity }) => quantity));
    expect(row.bought.quantity, row.spec).toBeGreaterThanOrEqual(row.quantity - 1e-6);
    expect(row.bought.left).toBeCloseTo(row.bought.quantity - net, 6);
    expect(sum(row.parts.flatMap(({ quantity, cut = [quantity] }) => cut))).toBeCloseTo(net, 6);
  }
  for (const { stock, toLength, bought: feet, stocks, spare } of groups) {
    expect(feet).toBe(stock * (stocks.length + spare) + sum(toLength.map(({ ordered }) => ordered)));
    for (const { length, ordered } of toLength) {
      expect(Number.isInteger(ordered)).toBe(true);
      expect(ordered).toBeGreaterThanOrEqual(length);
    }
  }
  return groups.length;
}

describe('on any lot and any supply', () => {
  test('sticks and reels are those of the cutting plan, feeders among them', () => {
    let groups = 0;
    fc.assert(
      fc.property(anyLot({ mostChargers: 8 }), (file) => {
        groups += expectOneCount(plan(toSite(file)));
      }),
      { numRuns: 25 },
    );
    fc.assert(
      fc.property(anySupply, (parts) => {
        groups += expectOneCount(plan(siteOf(parts)));
      }),
      { numRuns: 15 },
    );
    expect(groups).toBeGreaterThan(100);
  });
});

test('many pieces are fitted as first fit does it one by one', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 60 }), (lengths) => {
      const stocks = fitMany(100, lengths, 0);
      expect(stocks.flat().sort((a, b) => a - b)).toEqual(lengths.map((_, i) => i));
      for (const stock of stocks) expect(sum(stock.map((piece) => lengths[piece]!))).toBeLessThanOrEqual(100);
      expect(stocks.length).toBe(firstFit(problemOf(100, lengths)).length);
    }),
  );
});

describe.each(['library-lot', 'fleet-yard', 'library-pedestals'])('the cutting plan of %s', (name) => {
  const { planned } = plannedSample(name);
  const groups = cutPlan(planned);
  const sticks = groups.filter(({ item }) => item === 'raceway');

  test('has every foot of every conduit in exactly one stick', () => {
    const cutFor = new Map<string, number>();
    for (const { stocks } of sticks)
      for (const { pieces } of stocks)
        for (const { of, length } of pieces) cutFor.set(of, (cutFor.get(of) ?? 0) + length);
    for (const { id, length, tradeSize } of planned.conduits)
      if (tradeSize !== null) expect(cutFor.get(id)).toBeCloseTo(length, 6);
    const feeders = planned.takeoff.filter(({ item }) => item === 'feeder raceway').flatMap(({ parts }) => parts);
    for (const { of, quantity } of feeders) expect(cutFor.get(of)).toBeCloseTo(quantity, 6);
    expect(cutFor.size).toBe(planned.conduits.length + feeders.length);
  });
  test('has every conductor whole on one reel or ordered to length', () => {
    const wanted = planned.takeoff
      .filter(({ item }) => /conductor$/.test(item))
      .flatMap(({ parts }) => parts.flatMap(({ quantity, cut = [quantity] }) => cut));
    const reels = groups.filter(({ item }) => item === 'conductor');
    const given = reels.flatMap(({ stocks, toLength }) => [...stocks.flatMap(({ pieces }) => pieces), ...toLength]);
    expect(given).toHaveLength(wanted.length);
    expect(sum(given.map(({ length }) => length))).toBeCloseTo(sum(wanted), 6);
  });
  test('cuts no stock past its end, and accounts for what is left', () => {
    for (const { stock, stocks, item } of groups)
      for (const { pieces, offcut } of stocks) {
        const kerfs = item === 'raceway' ? (pieces.length - 1) * (0.125 / 12) : 0;
        expect(sum(pieces.map(({ length }) => length)) + kerfs + offcut).toBeCloseTo(stock, 6);
      }
  });
  test('buys what is cut and what is spare, and no less than the length with waste', () => {
    for (const { stock, stocks, spare, count, bought, toLength } of groups) {
      expect(spare).toBeGreaterThanOrEqual(0);
      expect(stocks.length + spare).toBe(count);
      expect(bought).toBeCloseTo(stock * count + sum(toLength.map(({ ordered }) => ordered)), 6);
    }
  });
  test('is proved to take the fewest stocks', () => {
    for (const { stocks, bound } of groups) expect(stocks.length).toBe(bound);
  });
  test('is the count of the takeoff', () => {
    expect(expectOneCount(planned)).toBeGreaterThan(5);
  });
});
