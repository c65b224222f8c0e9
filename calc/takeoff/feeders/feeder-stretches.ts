import { bendsOf } from '../../../routing/network/bends.ts';
import { isUpright } from '../../../routing/network/support/held-parts.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Place } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Pullpoint } from '../../../routing/site/site.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import { stretchesOf } from '../../supply/feeders/stretches.ts';
import type { Straight } from '../fittings.ts';
import { highAlong, isHigh } from '../high.ts';

/** A feeder's way between two places where it can be opened, measured off for its conduits. Feet. */
export interface FeederStretch {
  readonly feet: number;
  readonly straights: readonly Straight[];
  /** Of each straight above ground. */
  readonly exposed: readonly number[];
  /** Above ground, but for what hangs overhead, level or sloping. */
  readonly strapped: number;
  readonly highStrapped: number;
  /** Whether its ends are off the ground. */
  readonly highEnds: number;
}

/** A leg this short is none, feet. */
const NO_LENGTH = 1e-6;

/** The stretches of a feeder whose way is drawn, from pull point to pull point. */
export function feederStretches(
  { path, like }: FeederConduit,
  pullpoints: readonly Pullpoint[],
  tolerance: number,
): readonly FeederStretch[] {
  if (path === null) return [];
  const ends: number[] = [];
  path.slice(1).forEach((to, i) => {
    ends.push((ends.at(-1) ?? 0) + distance(path[i]!, to));
  });
  let passed = 0;
  return stretchesOf(path, pullpoints, tolerance).map((stretch) => {
    const places = stretch.path.slice(1).map((to, i): Place => {
      const feet = distance(stretch.path[i]!, to);
      const middle = passed + feet / 2;
      passed += feet;
      const leg = ends.findIndex((end) => end >= middle - NO_LENGTH);
      return like[leg === -1 ? like.length - 1 : leg]?.place ?? 'surface';
    });
    return measured(stretch.path, places);
  });
}

function measured(path: readonly Point3[], places: readonly Place[]): FeederStretch {
  const turns = new Map(bendsOf(path).map(({ at, degrees }) => [at, degrees]));
  const straights: Straight[] = [];
  const exposed: number[] = [];
  let [feet, high, above, strapped, highStrapped, total] = [0, 0, 0, 0, 0, 0];
  places.forEach((place, leg) => {
    const [a, b] = [path[leg]!, path[leg + 1]!];
    const long = distance(a, b);
    const up = highAlong([a, b], place);
    feet += long;
    high += up;
    total += long;
    if (place !== 'underground') above += long;
    const hangs = place === 'overhead' && !isUpright(a, b);
    if (!hangs && place !== 'underground') {
      strapped += long;
      highStrapped += up;
    }
    const turn = turns.get(leg + 1) ?? 0;
    if (turn === 0 && leg + 1 < places.length) return;
    straights.push({ feet, high, turn, isTurnHigh: isHigh(b[2]) });
    exposed.push(above);
    [feet, high, above] = [0, 0, 0];
  });
  const highEnds = [path[0]!, path.at(-1)!].filter(([, , z]) => isHigh(z)).length;
  return { feet: total, straights, exposed, strapped, highStrapped, highEnds };
}
