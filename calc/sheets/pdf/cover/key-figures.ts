import { printLength, printTotal } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { leastMargin, marginsOf } from '../../../plan/margins.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { servedStalls } from '../../../plan/served.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { SUMMED_LENGTHS, type SummedLength, summedLength } from '../../../takeoff/totals.ts';
import type { Table } from '../kit/tables/table.ts';
import { ampsFigure, figure, NONE } from '../schedules/figures.ts';

/** What the set is about, in figures. */
export function keyFigures(site: Site, plan: Plan, width: number): Table {
  const running = plan.runs.filter(({ length }) => length !== null);
  const margins = marginsOf(plan, site);
  const [cord, branch] = [leastMargin(margins, 'cord'), leastMargin(margins, 'branch')];
  const worstDrop = plan.circuits.reduce<Plan['circuits'][number] | null>(
    (worst, circuit) => (worst === null || circuit.worstDropPercent > worst.worstDropPercent ? circuit : worst),
    null,
  );
  const total = (length: SummedLength): string => {
    const sum = summedLength(plan.takeoff, length);
    return sum === 0 ? NONE : printTotal(sum, site.units);
  };
  const cordLeft = cord?.cord?.left;
  const rows: (readonly [string, string])[] = [
    ['Stalls, and served by a charger', `${site.stalls.length}, ${servedStalls(plan, site.rules).size}`],
    ['Drops', String(site.drops.length)],
    ['Chargers, and with a run', `${site.chargers.length}, ${running.length}`],
    ...supplyRows(site, plan),
    [
      'Longest branch',
      branch?.branch
        ? `${branch.charger}, ${printLength(branch.branch.used, site.units)} of ${printLength(branch.branch.limit, site.units)}`
        : NONE,
    ],
    [
      'Least cord left over',
      cordLeft === undefined
        ? NONE
        : `${cord!.charger}, ${Number.isFinite(cordLeft) ? printLength(cordLeft, site.units) : 'no way to an inlet'}`,
    ],
    [
      'Largest drop from the source',
      worstDrop === null ? NONE : `${worstDrop.charger}, ${figure(worstDrop.worstDropPercent, 2)}%`,
    ],
    ['Branch conductors with waste: lines, grounding, pilots', total(SUMMED_LENGTHS.branchConductors)],
    ['Branch raceway with waste', total(SUMMED_LENGTHS.branchRaceway)],
    ['Place', site.georef === undefined ? 'not given' : `${site.georef.lat}°, ${site.georef.lon}°`],
    ['Units', site.units === 'm' ? 'meters' : 'feet'],
  ];
  return {
    short: 'key figures',
    title: 'Key figures',
    width,
    columns: [{ head: 'What', most: 20 }, { head: 'Figure' }],
    rows,
  };
}

/** Load at the head of each tree of the supply. */
function supplyRows(site: Site, plan: Plan): (readonly [string, string])[] {
  const solved = new Map(plan.supply.equipment.map((one) => [one.id, one]));
  return treeOf(site)
    .nodes.filter(({ parent }) => parent < 0)
    .flatMap(({ equipment }) => {
      const one = solved.get(equipment.id);
      if (one === undefined) return [];
      const words = `${figure(one.connectedVa / 1000, 1)} kVA connected, ${ampsFigure(one.demandAmps)} A demand`;
      return [[`Load at ${equipment.id}`, words] as const];
    });
}
