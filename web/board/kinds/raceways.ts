import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Raceway } from '../../../routing/site/site.ts';
import { drawRaceways } from '../pictures/ways/raceways.ts';
import { drawRisers } from '../pictures/ways/risers.ts';
import { HANDLE_BESIDE } from './beside.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface RacewayMark extends ElementMark<'raceways'> {
  readonly raceway: Raceway;
}

export const raceways: BoardKind<'raceways', RacewayMark> = {
  called: 'raceways and runs',
  mark: kept(
    (raceway: Raceway): RacewayMark => ({
      list: 'raceways',
      id: raceway.id,
      raceway,
      ...boxOf(raceway.path.map(inPlan)),
    }),
  ),
  pictures: [
    { name: 'raceways', over: 120, draw: drawRaceways },
    { name: 'risers', over: 150, draw: drawRisers },
  ],
  hold: { rank: 50, tour: 40, rides: true },
  aims: ({ raceway }, { path }) => path(raceway.path),
  // A vertex straight above another is drawn beside it, or the lower of the two could not be taken hold of.
  handle: ({ index = 0 }, all, scale) => {
    const { at } = all[index]!;
    const above = all
      .slice(0, index)
      .filter((other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) * scale < 8).length;
    return { shape: 'square', aside: [above * HANDLE_BESIDE * 0.8, above * HANDLE_BESIDE * 0.8] };
  },
};
