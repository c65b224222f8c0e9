import { between, distance } from '../../../routing/plane/space.ts';
import type { Surface } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Raceway } from '../../../routing/site/site.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import { type Tally, tallying } from '../tally.ts';
import { trenches, trenchWidth } from './trench.ts';

/** One hole for one conduit. */
export const CORE_DRILL = takeoffKind({
  item: 'core drill',
  spec: 'through paving',
  unit: 'each',
  basis: 'one where a conduit comes up through asphalt or concrete; none through soil',
});

const PAVED: ReadonlySet<Surface> = new Set(['asphalt', 'concrete']);
/** Sand under and over conduits, inches. Common practice, no source. */
const BEDDING = 8;
/** Paving that is taken up and made good, inches, and how far past the trench on either side. Common practice, no source. */
const PAVING: Readonly<Record<Surface, number>> = { asphalt: 4, concrete: 6, soil: 0 };
const CUT_BACK = 6;
/** Room that what was dug takes up, over what it took in the ground. Common practice, no source. */
const SWELL = 1.25;

const trenchKinds = byWords((ground, size) => {
  const [surface, depth] = ground.split(' ') as [Surface, string];
  const wide = `${size} in wide`;
  const row = (item: string, spec: string, basis: string, unit = 'ft') => takeoffKind({ item, spec, unit, basis });
  return {
    trench: row(
      'trench',
      `${surface}, ${depth} in deep, ${wide}`,
      'plan length of underground raceways, dug; those that share a trench counted once; as wide as the conduits in it ask for',
    ),
    sawCut: row('saw cut', surface, 'both edges of what is taken up, 6 in past the trench on either side'),
    bedding: row('bedding', `sand, ${wide}`, 'length of the trenches: 4 in under and 4 in over the conduits'),
    tape: row('warning tape', 'buried line', 'one over each trench, 12 in under grade'),
    backfill: row(
      'backfill',
      `${depth} in deep, ${wide}`,
      'length of the trenches, compacted in lifts, with what was dug',
    ),
    spoil: row(
      'spoil',
      'cubic yard, hauled off',
      'paving taken up and what the sand takes the room of, swollen by a quarter; common practice',
      'each',
    ),
    patch: row(
      'patch',
      `${surface}, ${Number(size) + (PAVED.has(surface) ? 2 * CUT_BACK : 0)} in wide`,
      'length of the trenches: paving made good 6 in past the trench on either side, soil seeded',
    ),
  };
});

/** Cubic yards that are hauled off for a foot of trench. */
function spoilOf(surface: Surface, width: number): number {
  const wide = width + (PAVED.has(surface) ? 2 * CUT_BACK : 0);
  return (SWELL * (BEDDING * width + PAVING[surface] * wide)) / 144 / 27;
}

/** What is dug and made good again: trenches by surface, depth and width, with all that goes into them and over them. */
export function groundQuantities(raceways: readonly Raceway[], conduitsIn: ReadonlyMap<string, number>): Tally {
  const { add, tally } = tallying();
  for (const { raceway, surface, depth, length, conduits } of trenches(raceways, conduitsIn)) {
    const width = trenchWidth(conduits);
    const kinds = trenchKinds(`${surface} ${Math.round(depth * 12)}`, String(width));
    add(kinds.trench, raceway, length);
    if (PAVED.has(surface)) add(kinds.sawCut, raceway, 2 * length);
    add(kinds.bedding, raceway, length);
    add(kinds.tape, raceway, length);
    add(kinds.backfill, raceway, length);
    add(kinds.spoil, raceway, length * spoilOf(surface, width));
    add(kinds.patch, raceway, length);
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
