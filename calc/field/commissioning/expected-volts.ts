import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import { branchAt, chargerPlaces } from '../../plan/compared/plan-difference.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { boxVolts } from '../../supply/load-flow/box-volts.ts';
import { addDraw, PER_BUS } from '../../supply/load-flow/draws.ts';
import { drawsOf } from '../../supply/load-flow/seats.ts';
import { linesOn, voltsAt } from '../../supply/load-flow/supply-report.ts';
import { solve } from '../../supply/load-flow/sweep.ts';
import { supplyWork } from '../../supply/supply.ts';
import { tablesOf } from '../../tables/editions.ts';

type Planned = Pick<UncountedPlan, 'runs' | 'branches'>;

/**
 * Volts, line to line, that the plan expects at the box of a charger that draws so many amperes while no other charger
 * does, the loads that are drawn being on: the same solution of the supply as the plan's, and the same branch. Of a
 * three-phase charger the least of the three pairs. Null where it has no branch.
 */
export function expectedAtBox(site: Site, plan: Planned, charger: string, amps: number): number | null {
  const place = chargerPlaces(site.chargers).get(charger);
  const branch = place === undefined ? null : branchAt(plan as UncountedPlan, site.chargers, place);
  if (place === undefined || branch === null) return null;
  const { seats, volts } = solvedFor(site, plan, place, amps);
  const { powerFactor } = site.rules;
  const load = { lines: LINES[seats.lines[place]!] as PhasePair, amps, powerFactor, nominal: seats.nominal[place]! };
  return boxVolts(branch.branch.ohms, volts, seats.bus[place]!, load).volts;
}

/** Volts between two lines that the plan expects at equipment while no charger draws anything, by its pairs of lines. */
export function expectedAtEquipment(site: Site, plan: Planned): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const { tree, lines, model, volts } = solvedFor(site, plan, null, 0);
  return new Map(
    tree.nodes.map((node, place) => {
      const own = voltsAt(volts, model.loadBus[place]!, node.system, linesOn({ lines }, node));
      const pairs = (['AB', 'BC', 'CA'] as const).flatMap((pair) =>
        own[pair] > 0 ? [[pair, own[pair]] as const] : [],
      );
      return [node.equipment.id, new Map<string, number>(pairs)];
    }),
  );
}

/** The supply with one charger on, or none. */
function solvedFor(site: Site, plan: Planned, place: number | null, amps: number) {
  const work = workOf(site, plan.runs);
  if (place === null || amps === 0) return { ...work, volts: solvedWith(work, 0, '', 0) };
  const { seats } = work;
  return { ...work, volts: solvedWith(work, seats.bus[place]!, LINES[seats.lines[place]!]!, amps) };
}

const workOf = kept((site: Site, runs: Planned['runs']) => ({ site, ...supplyWork(site, runs, tablesOf(site.rules)) }));

/** Volts at every bus with so many amperes drawn at one: the same for all chargers of a board that lie across its lines. */
const solvedWith = keptByKey(
  (bus: number, across: Lines | '', amps: number) => `${bus} ${across} ${amps}`,
  ({ site, tree, lines, model }: ReturnType<typeof workOf>, bus, across, amps) => {
    const sums = new Float64Array(PER_BUS * model.buses.length);
    if (across !== '') addDraw(sums, bus, across, amps, 0);
    const draws = drawsOf(tree, model, lines, sums, site.loads, {
      powerFactor: site.rules.powerFactor,
      factor: 1,
      vaOf: ({ va, generation }) => (generation === true ? -va : va),
    });
    return solve(model.buses, { ...draws, ceiling: draws.ceiling.fill(Infinity) }).volts;
  },
);
