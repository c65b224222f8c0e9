import type { Site } from '../../../routing/site/site.ts';
import type { CostSheet } from '../../takeoff/bid/cost.ts';
import { cents } from '../../takeoff/bid/money.ts';
import { SUMMED_LENGTHS, summedLength } from '../../takeoff/totals.ts';
import type { Plan } from '../plan-shape.ts';

/** A site with its plan and its cost. */
interface Priced {
  readonly site: Site;
  readonly plan: Pick<Plan, 'takeoff'>;
  readonly cost: CostSheet;
}

/** A price by what there is of something; null where there is none of it. */
export interface UnitFigure {
  readonly name: UnitFigureName;
  readonly unit: 'dollars' | 'hours';
  readonly value: number | null;
}

export type UnitFigureName =
  | 'price per stall'
  | 'price per port'
  | 'price per kW'
  | 'price per ft of branch raceway'
  | 'hours per stall';

/** Stalls that some charger is meant to serve. */
export const stallsServed = (site: Site): number => new Set(site.chargers.flatMap(({ stalls }) => stalls)).size;

/** Kilowatts of all chargers at their ratings. */
const ratedKw = (site: Site): number =>
  site.chargers.reduce((sum, { amps, volts, phases }) => sum + amps * volts * (phases === 3 ? Math.sqrt(3) : 1), 0) /
  1000;

/** The price over stalls served, ports, kilowatts and feet of branch raceway, and the hours over stalls. */
export function unitFigures({ cost, site, plan }: Priced): readonly UnitFigure[] {
  const over = (many: number): number | null => (many > 0 ? cents(cost.price / many) : null);
  const stalls = stallsServed(site);
  return [
    { name: 'price per stall', unit: 'dollars', value: cost.pricePerStall },
    { name: 'price per port', unit: 'dollars', value: over(site.chargers.length) },
    { name: 'price per kW', unit: 'dollars', value: over(ratedKw(site)) },
    {
      name: 'price per ft of branch raceway',
      unit: 'dollars',
      value: over(summedLength(plan.takeoff, SUMMED_LENGTHS.branchRaceway)),
    },
    { name: 'hours per stall', unit: 'hours', value: stalls > 0 ? cost.hours / stalls : null },
  ];
}
