import { describe, expect, test } from 'vitest';
import type { Conduit } from '../../../../../calc/plan-file/branches.ts';
import { conduitStretches } from '../../../../../calc/sheets/drawing/conduit-stretches.ts';
import { conduitRanges } from '../../../../../calc/sheets/pdf/plans/conduit-tags.ts';
import type { Point3 } from '../../../../../routing/site/site.ts';
import { plannedSample } from '../../../../outside/sheets/planned-samples.ts';

const planLength = (path: readonly Point3[]): number =>
  path.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);

const conduit = (id: string, tradeSize: string, path: readonly Point3[]): Conduit => ({
  id,
  method: 'EMT',
  tradeSize,
  length: planLength(path),
  circuits: [],
  conductors: [],
  fillPercent: 0,
  fillLimit: 40,
  bends: 0,
  bendDegrees: 0,
  from: '',
  to: '',
  path,
  raceways: [],
});

describe('stretches of conduits', () => {
  test.each(['library-lot', 'fleet-yard', 'hospital-lot'])(
    'every foot of plan of every conduit of %s is in exactly one stretch',
    (name) => {
      const { planned } = plannedSample(name);
      const drawn = planned.conduits.reduce((sum, { path }) => sum + planLength(path), 0);
      const noted = conduitStretches(planned.conduits).reduce(
        (sum, { from, to, conduits }) =>
          sum + Math.hypot(to[0] - from[0], to[1] - from[1]) * conduits.reduce((count, one) => count + one.count, 0),
        0,
      );
      expect(noted).toBeCloseTo(drawn, 3);
    },
  );
  test('they part where a conduit ends, and run over a place where only elevations change', () => {
    const stretches = conduitStretches([
      conduit('a', '1', [
        [0, 0, 10],
        [30, 0, 10],
      ]),
      conduit('b', '1', [
        [50, 0, 12],
        [0, 0, 12],
      ]),
    ]);
    expect(stretches).toEqual([
      { from: [0, 0], to: [30, 0], conduits: [{ method: 'EMT', tradeSize: '1', count: 2, ids: ['a', 'b'] }] },
      { from: [30, 0], to: [50, 0], conduits: [{ method: 'EMT', tradeSize: '1', count: 1, ids: ['b'] }] },
    ]);
  });
  test('they are found once for all sheets of a set, by size and by conduit apart', () => {
    const conduits = [
      conduit('a', '1', [
        [0, 0, 10],
        [30, 0, 10],
      ]),
      conduit('b', '1', [
        [0, 0, 10],
        [60, 0, 10],
      ]),
      conduit('c', '1', [
        [30, 0, 12],
        [60, 0, 12],
      ]),
    ];
    const [bySize, byConduit] = [conduitStretches(conduits), conduitStretches(conduits, 'conduit')];
    expect([bySize.length, byConduit.length]).toEqual([1, 2]);
    expect(conduitStretches(conduits)).toBe(bySize);
    expect(conduitStretches(conduits, 'conduit')).toBe(byConduit);
  });
  test('a riser is no stretch', () => {
    expect(
      conduitStretches([
        conduit('a', '1', [
          [0, 0, 0],
          [0, 0, 10],
        ]),
      ]),
    ).toEqual([]);
  });
});

test('names that follow on one another are a range, others a list, in the order of their numbers', () => {
  expect(conduitRanges(['P1-10.1', 'P1-9.1', 'P1-8.1', 'P1-3.2'])).toBe('P1-8.1 to P1-10.1, P1-3.2');
  expect(conduitRanges(['P1-3.2', 'P2-4.2'])).toBe('P1-3.2, P2-4.2');
  expect(conduitRanges(['riser', 'P1-1.1'])).toBe('P1-1.1, riser');
});
