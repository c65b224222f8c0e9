import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import { feederProspects } from '../../supply/feeders/feeder-prospects.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

const ASSUMED =
  'Losses of a year: the hours of charging are a rule of the site, and each way gives the same energy; the core of a transformer is half of the loss that its size may have at 35% load, all the year (common practice, no source). Transformers at the far end: impedance is the middle of what their size usually has, to be confirmed. Continuous load counts 125% against the breaker and the terminals, and its own amperes against the conductors where they lie and a transformer.';

/** Ways of using each existing feeder, a row for each; the one in use first says so. */
export function feederOptionsSheet(site: Site): readonly (readonly Cell[])[] {
  const head: Cell[] = [
    'feeder',
    'conductors',
    `length (${site.units})`,
    'breaker (A)',
    'volts',
    'transformer at far end (kVA)',
    'now',
    'charger volts',
    'charger (kW)',
    'chargers wished',
    'at full rate',
    'managed to 6 A each',
    'shared rate (A)',
    'shared rate (kW)',
    'worst drop (%)',
    'all at full rate, mean line on the feeder (A)',
    'the feeder carries (A)',
    'ceiling of load management (A)',
    'transformer loaded (% of kVA)',
    'transformer, worst line (%)',
    'breaker ahead of transformer (A)',
    'transformer protection',
    'lost in a year under load (kWh)',
    'lost in a year in the core (kWh)',
    'left on feeder (kVA)',
    'left behind transformer (kVA)',
  ];
  const rows = feederProspects(site).flatMap((prospects): Cell[][] => {
    const { feeder } = prospects;
    const { sets, size, metal, insulation } = feeder.conductor;
    const conductors = `${sets > 1 ? `${sets} sets of ` : ''}${size} ${metal} ${insulation}`;
    if (!prospects.ok) return [[feeder.id, conductors, null, feeder.breakerAmps, prospects.says]];
    const { wish, length, ways } = prospects;
    return ways.map((way): Cell[] => [
      feeder.id,
      conductors,
      rounded(fromFeet(length, site.units), 2),
      feeder.breakerAmps,
      way.volts,
      way.kva,
      way.asItIs ? 'now' : null,
      way.chargerVolts,
      rounded(way.chargerKw, 2),
      wish.chargers,
      way.atFullRate,
      way.atPilotFloor,
      way.shared === null ? null : rounded(way.shared.amps, 2),
      way.shared === null ? null : rounded(way.shared.kw, 2),
      Number.isFinite(way.worstDropPercent) ? rounded(way.worstDropPercent, 2) : null,
      rounded(way.fullRateAmps.mean, 1),
      rounded(way.steadyAmps, 1),
      way.managedAmps,
      way.transformerKvaPercent === null ? null : rounded(way.transformerKvaPercent, 1),
      way.transformerPercent === null ? null : rounded(way.transformerPercent, 1),
      way.transformerBreakerAmps,
      way.protection,
      rounded(way.lossKwhAYear.load, 0),
      rounded(way.lossKwhAYear.core, 0),
      rounded(way.leftKva.onFeeder, 1),
      way.kva === null ? null : rounded(way.leftKva.behind, 1),
    ]);
  });
  return rows.length === 0
    ? [head, [], ['No feeder of the site is marked as existing.'], [CAUTIONS]]
    : [head, ...rows, [], [ASSUMED], [CAUTIONS]];
}

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
