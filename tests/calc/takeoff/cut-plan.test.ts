import { describe, expect, test } from 'vitest';
import { bought, cutPlan } from '../../../calc/takeoff/cut-plan.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

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
    expect(cutFor.size).toBe(planned.conduits.length);
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
  test('is proved to take the fewest stocks', () => {
    for (const { stocks, bound } of groups) expect(stocks.length).toBe(bound);
  });
  test('buys no less than is cut', () => {
    for (const group of groups)
      expect(bought(group)).toBeGreaterThanOrEqual(
        sum(group.stocks.flatMap(({ pieces }) => pieces.map(({ length }) => length))),
      );
  });
});
