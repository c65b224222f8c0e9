import { between, distance } from '../../routing/plane/space.ts';
import type { Point3, Raceway } from '../../routing/site/site.ts';
import { kindOf } from '../prices/kind.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import { type Tally, tallying } from './tally.ts';
import { trenches } from './trench.ts';

/** One hole for one conduit. */
export const CORE_DRILL = kindOf({
  item: 'core drill',
  spec: 'through paving',
  unit: 'each',
  basis: 'one where a conduit comes up through asphalt or concrete; none through soil',
});

/** What is dug: trenches by surface and depth. */
export function groundQuantities(raceways: readonly Raceway[]): Tally {
  const { add, tally } = tallying();
  for (const { raceway, surface, depth, length } of trenches(raceways)) {
    const spec = `${surface}, ${Math.round(depth * 12)} in deep`;
    add(
      kindOf({
        item: 'trench',
        spec,
        unit: 'ft',
        basis: 'plan length of underground raceways; those that share a trench counted once',
      }),
      raceway,
      length,
    );
  }
  return tally;
}

/** Drilled for feeders: one for each conduit of a feeder that comes up through asphalt or concrete. */
export function feederDrills(feeders: readonly FeederConduit[], raceways: readonly Raceway[]): Tally {
  const { add, tally } = tallying();
  const buried = raceways.filter(({ place }) => place === 'underground');
  for (const { feeder, path } of feeders) {
    if (feeder.existing === true || path === null) continue;
    const paved = path.slice(1).filter((b, i) => {
      const a = path[i]!;
      if (a[2] < 0 === b[2] < 0) return false;
      const under = buried.find((raceway) => isAlong(raceway, between(a, b, a[2] / (a[2] - b[2]))));
      return under !== undefined && (under.surface ?? 'asphalt') !== 'soil';
    });
    add(CORE_DRILL, feeder.id, paved.length * feeder.conductor.sets);
  }
  return tally;
}

/** A point this near to a raceway's line lies on it, feet. */
const ON = 0.05;

const isAlong = ({ path }: Raceway, at: Point3): boolean =>
  path.some((to, i) => {
    const from = path[i - 1];
    return from !== undefined && distance(from, at) + distance(at, to) <= distance(from, to) + ON;
  });
