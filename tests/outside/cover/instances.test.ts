import { describe, expect, test } from 'vitest';
import { fewTogether } from '../../../routing/propose/cover/few-together.ts';
import { fewestColumns } from '../../../routing/propose/cover/set-cover.ts';
import instances from './instances.json' with { type: 'json' };

type DropInstance = (typeof instances.drops)[number];

const reachedFrom = ({ points, candidates, reach }: DropInstance): number[][] =>
  candidates.map(([x, y]) =>
    points.flatMap(([px, py], i) => (Math.hypot(px! - x!, py! - y!) <= reach + 1e-9 ? [i] : [])),
  );

/** The cover holds every element: from the definition. */
const covered = (columns: readonly (readonly number[])[], chosen: readonly number[]): number =>
  new Set(chosen.flatMap((c) => columns[c]!)).size;

// Made for this project from fixed seeds; optimum from an integer program.
describe('fewest drops within reach, against known optima', () => {
  test.each(instances.drops)('$id: $minDrops', (instance) => {
    const columns = reachedFrom(instance);
    const { chosen, bound } = fewestColumns(instance.points.length, columns);
    expect([chosen.length, bound]).toEqual([instance.minDrops, instance.minDrops]);
    expect(covered(columns, chosen)).toBe(instance.points.length);
  });
  test.each(instances.drops)('$id, two to a drop: $minDropsCapacity2', (instance) => {
    const columns = fewTogether(reachedFrom(instance), 2);
    const { chosen, bound } = fewestColumns(instance.points.length, columns);
    expect([chosen.length, bound]).toEqual([instance.minDropsCapacity2, instance.minDropsCapacity2]);
    expect(covered(columns, chosen)).toBe(instance.points.length);
  });
});

// Published covering problems: the fewest variables that hit every triple (stn9 and stn81).
describe('fewest variables that hit every triple', () => {
  test.each(instances.triples)('$id: $optimum', ({ variables, triples, optimum }) => {
    const columns = Array.from({ length: variables }, (_, v) => triples.flatMap((t, i) => (t.includes(v) ? [i] : [])));
    const { chosen, bound } = fewestColumns(triples.length, columns);
    expect(chosen.length).toBe(optimum);
    expect(covered(columns, chosen)).toBe(triples.length);
    // The linear relaxation gives a third of the variables; only the small one is settled.
    expect(bound).toBe(variables > 50 ? variables / 3 : optimum);
  });
});
