import type { Equipment, Pullpoint, Rules } from '../../../routing/site/site.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import { conductorSpec, wireSpec } from '../../prices/spec.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { type Aloft, ON_GROUND, plusAloft, times } from '../high.ts';
import { type Add, type Tally, tallying } from '../tally.ts';
import { addFeederRaceways } from './feeder-raceways.ts';
import { feederStretches } from './feeder-stretches.ts';

const terminationKind = byWords((spec) =>
  takeoffKind({
    item: 'termination',
    spec,
    unit: 'each',
    basis: 'both ends of each conductor of a feeder, made up and torqued',
  }),
);
const lugKind = byWords((spec) =>
  takeoffKind({
    item: 'lug',
    spec,
    unit: 'each',
    basis: 'one of each conductor of a feeder at a transformer, which comes without; common practice',
  }),
);
const FEEDER_TEST = takeoffKind({
  item: 'test',
  spec: 'feeder, insulation resistance',
  unit: 'each',
  basis: 'one of each set of a new feeder, before it is energized; common practice',
});

/**
 * New feeders to the last lug: conductors cut to length, terminations, conduits in sticks with their fittings, ends and
 * supports, and the test of their insulation. Existing ones are there already; devices are counted with all devices.
 */
export function feederQuantities(
  conduits: readonly FeederConduit[],
  pullpoints: readonly Pullpoint[],
  equipment: readonly Equipment[],
  tables: CodeTables,
  rules: Rules,
): Tally {
  const { add, tally } = tallying();
  const transformers = new Set(equipment.flatMap(({ id, kind }) => (kind === 'transformer' ? [id] : [])));
  for (const conduit of conduits) {
    const { feeder } = conduit;
    if (feeder.existing === true) continue;
    const lugged = [feeder.from, feeder.to].filter((id) => transformers.has(id)).length;
    const aloft = feederStretches(conduit, pullpoints, rules.joinTolerance, rules.workHeight)
      .flatMap(({ straights }) => straights)
      .reduce((sum, straight) => plusAloft(sum, straight.aloft), ON_GROUND);
    addFeederConductors(conduit, lugged, aloft, rules, add);
    addFeederRaceways(conduit, pullpoints, tables, rules, add);
    add(FEEDER_TEST, feeder.id, feeder.conductor.sets);
  }
  return tally;
}

function addFeederConductors(
  { feeder, length, conductors }: FeederConduit,
  lugged: number,
  aloft: Aloft,
  { allowance }: Rules,
  add: Add,
): void {
  const { sets, metal } = feeder.conductor;
  const each = length + 2 * allowance.equipment;
  for (const { use, size, insulation, count } of conductors) {
    const all = count * sets;
    add(
      takeoffKind({
        item: use === 'line' ? 'feeder conductor' : `feeder ${use} conductor`,
        spec: conductorSpec(size, metal, insulation),
        unit: 'ft',
        basis: `${use === 'line' ? 'lines and neutral' : 'one'} of each set: the length and the allowance at both ends, each cut whole`,
      }),
      feeder.id,
      all * each,
      times(aloft, all),
      Array.from({ length: all }, () => each),
    );
    const spec = wireSpec(size, metal);
    add(terminationKind(spec, ''), feeder.id, 2 * all);
    add(lugKind(spec, ''), feeder.id, lugged * all);
  }
}
