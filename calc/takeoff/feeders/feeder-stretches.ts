import { bendsOf } from '../../../routing/network/bends.ts';
import { isUpright } from '../../../routing/network/support/held-parts.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Place } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Pullpoint } from '../../../routing/site/site.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import { stretchesOf } from '../../supply/feeders/stretches.ts';
import type { Straight } from '../conduits/fittings.ts';
import { type Aloft, aloftAlong, aloftAt, ON_GROUND, plusAloft, type WorkHeight } from '../high.ts';

/** A feeder's way between two places where it can be opened, measured off for its conduits. Feet. */
export interface FeederStretch {
  readonly feet: number;
  readonly straights: readonly Straight[];
  /** Of each straight above ground. */
  readonly exposed: readonly number[];
  /** Above ground, but for what hangs overhead, level or sloping. */
  readonly strapped: number;
  readonly strappedAloft: Aloft;
  /** Of its two ends. */
  readonly endsAloft: Aloft;
}

/** A leg this short is none, feet. */
const NO_LENGTH = 1e-6;

/** The stretches of a feeder whose way is drawn, from pull point to pull point. */
export function feederStretches(
  { path, like }: FeederConduit,
  pullpoints: readonly Pullpoint[],
  tolerance: number,
  heights: WorkHeight,
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
    return measured(stretch.path, places, heights);
  });
}

function measured(path: readonly Point3[], places: readonly Place[], heights: WorkHeight): FeederStretch {
  const turns = new Map(bendsOf(path).map(({ at, degrees }) => [at, degrees]));
  const straights: Straight[] = [];
  const exposed: number[] = [];
  let [feet, above, strapped, total] = [0, 0, 0, 0];
  let [aloft, strappedAloft] = [ON_GROUND, ON_GROUND];
  places.forEach((place, leg) => {
    const [a, b] = [path[leg]!, path[leg + 1]!];
    const long = distance(a, b);
    const up = aloftAlong([a, b], place, heights);
    feet += long;
    aloft = plusAloft(aloft, up);
    total += long;
    if (place !== 'underground') above += long;
    const hangs = place === 'overhead' && !isUpright(a, b);
    if (!hangs && place !== 'underground') {
      strapped += long;
      strappedAloft = plusAloft(strappedAloft, up);
    }
    const turn = turns.get(leg + 1) ?? 0;
    if (turn === 0 && leg + 1 < places.length) return;
    straights.push({ feet, aloft, turn, turnAloft: aloftAt(b[2], heights) });
    exposed.push(above);
    [feet, aloft, above] = [0, ON_GROUND, 0];
  });
  const endsAloft = plusAloft(aloftAt(path[0]![2], heights), aloftAt(path.at(-1)![2], heights));
  return { feet: total, straights, exposed, strapped, strappedAloft, endsAloft };
}
