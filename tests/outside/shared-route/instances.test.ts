import { describe, expect, test } from 'vitest';
import { type SharedRouteWish, sharedRoute } from '../../../routing/propose/shared-route.ts';
import instances from './instances.json' with { type: 'json' };

type Instance = (typeof instances)[number];

const wishOf = ({ nodes, root, terminals, edges, a, b, s, cap }: Instance): SharedRouteWish => ({
  nodes,
  root,
  terminals,
  edges: edges as unknown as SharedRouteWish['edges'],
  price: { raceway: a, conductor: b, conduit: s, circuitsPerConduit: cap },
});

/** The cost of the paths themselves, worked from the definition and nothing of ours. */
function costOf({ edges, a, b, s, cap }: Instance, paths: readonly (readonly number[])[]): number {
  const carried = new Map<string, number>();
  const key = (u: number, v: number): string => (u < v ? `${u} ${v}` : `${v} ${u}`);
  for (const path of paths)
    path.slice(1).forEach((node, i) => {
      const edge = key(path[i] as number, node);
      carried.set(edge, (carried.get(edge) ?? 0) + 1);
    });
  return edges.reduce((sum, [u, v, length, multiplier]) => {
    const q = carried.get(key(u as number, v as number)) ?? 0;
    return q === 0 ? sum : sum + (length as number) * (a * (multiplier as number) + b * q + s * Math.ceil(q / cap));
  }, 0);
}

// Instances made from fixed seeds; optimum, or the best known, by HiGHS on the directed multi-commodity model.
describe('home runs that share raceways, against known optima', () => {
  test.each(instances)('$id: $best', (instance) => {
    const { cost, bound, paths } = sharedRoute(wishOf(instance));
    expect(cost).toBeCloseTo(instance.best, 4);
    expect(costOf(instance, paths)).toBeCloseTo(cost, 4);
    expect(bound).toBeLessThanOrEqual(instance.best + 1e-6);
    expect(bound).toBeGreaterThan(0.97 * instance.best);
    paths.forEach((path, k) => {
      expect(path[0]).toBe(instance.root);
      expect(path.at(-1)).toBe(instance.terminals[k]);
    });
  });
});
