import type { Pullpoint, Rules } from '../../../routing/site/site.ts';
import { takeoffKind } from '../../prices/kind.ts';
import { racewaySpec } from '../../prices/spec.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { addBushings } from '../conduits/bushings.ts';
import { addFittings, type Straight } from '../conduits/fittings.ts';
import { expansionFittingsFor, isPlastic, racewayKinds, supports } from '../conduits/raceway-quantities.ts';
import { ON_GROUND, plusAloft, shareAloft, times } from '../high.ts';
import type { Add } from '../tally.ts';
import { type FeederStretch, feederStretches } from './feeder-stretches.ts';

/** Where only its length is given, a feeder is taken to turn once at each end. Common practice, no source. */
const UNDRAWN_TURN = 90;

/** One whose length alone is known: a straight with a turn at both ends, in the ground if it is plastic. */
function undrawn({ length, method }: FeederConduit): FeederStretch {
  const corner = (feet: number, turn: number): Straight => ({
    feet,
    aloft: ON_GROUND,
    turn,
    turnAloft: ON_GROUND,
  });
  const strapped = isPlastic(method) ? 0 : length;
  return {
    feet: length,
    straights: [corner(length, UNDRAWN_TURN), corner(0, UNDRAWN_TURN), corner(0, 0)],
    exposed: [0, 0, 0],
    strapped,
    strappedAloft: ON_GROUND,
    endsAloft: ON_GROUND,
  };
}

const feederRacewayKind = (spec: string) =>
  takeoffKind({
    item: 'feeder raceway',
    spec,
    unit: 'ft',
    basis:
      'length of the feeder for each set, taken square at corners; its fittings along its drawn way, and where its length alone is given, one turn of 90 degrees at each end',
  });

/** The conduits of a new feeder with their fittings, ends and straps; hangers and trapezes are those of all that hangs there. */
export function addFeederRaceways(
  conduit: FeederConduit,
  pullpoints: readonly Pullpoint[],
  tables: CodeTables,
  { joinTolerance, temperatureRangeC, bentTradeSize, workHeight }: Rules,
  add: Add,
): void {
  const { feeder, method, tradeSize, conductors } = conduit;
  const { id, conductor } = feeder;
  const { sets } = conductor;
  const drawn = feederStretches(conduit, pullpoints, joinTolerance, workHeight);
  const kinds = racewayKinds(method, tradeSize ?? '');
  const raceway = feederRacewayKind(racewaySpec(method, tradeSize));
  for (const stretch of drawn.length > 0 ? drawn : [undrawn(conduit)]) {
    const { feet, straights, exposed, strapped, strappedAloft, endsAloft } = stretch;
    const cut = method === 'LFMC' ? [feet] : addFittings(method, tradeSize, straights, id, add, bentTradeSize, sets);
    const aloft = straights.reduce((sum, one) => plusAloft(sum, one.aloft), ON_GROUND);
    const lengths = Array.from({ length: sets }, () => cut).flat();
    add(raceway, id, sets * feet, times(aloft, sets), lengths);
    if (method !== 'tray') {
      add(kinds.connector, id, 2 * sets, times(endsAloft, sets));
      addBushings(tables, method, tradeSize, conductors, id, 2 * sets, times(endsAloft, sets), add);
    }
    const straps = sets * supports(tables, method, tradeSize, strapped);
    add(kinds.support, id, straps, shareAloft(strappedAloft, strapped, straps));
    if (!isPlastic(method)) continue;
    const fittings = sets * expansionFittingsFor(tables, exposed, temperatureRangeC);
    add(kinds.expansion, id, fittings, shareAloft(aloft, feet, fittings));
  }
}
