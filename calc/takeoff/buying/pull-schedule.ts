import type { Site } from '../../../routing/site/site.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';
import type { PlanFile } from '../../plan-file/plan-file.ts';
import { conductorSpec, racewaySpec } from '../../prices/spec.ts';
import { feederConduits } from '../../supply/feeders/feeder-conduit.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import { tablesOf } from '../../tables/editions.ts';
import { cutPlan } from '../cutting/cut-plan.ts';
import { GROUNDING_COLOR, lineColors, neutralColor, PILOT_COLOR } from '../quantities/line-colors.ts';

/** What of a plan tells what is pulled. */
type Pulled = Pick<PlanFile, 'circuits' | 'takeoff'> & { readonly branches: readonly EquipmentBranches[] };

/** One pull of conductors of one length. */
export interface ScheduledPull {
  /** The circuit by its charger, the feeder, or the conduit whose grounding conductor it is. */
  readonly of: string;
  readonly kind: 'circuit' | 'grounding' | 'feeder';
  readonly from: string;
  readonly to: string;
  /** Conduits that it goes through, in order; of a feeder what its raceway is, and which set. */
  readonly through: readonly string[];
  /** `2 x 8 AWG copper THWN-2`. */
  readonly conductors: readonly string[];
  readonly colors: readonly string[];
  /** Cut length of each, whole feet. */
  readonly feet: number;
  /** `black 1, red 2`: the reel of each color, as the cutting plan numbers them; empty where cut to length. */
  readonly reels: readonly string[];
}

/**
 * The pulls of a job as a crew makes them: feeders by set, then each home run, its circuits the longest first and the
 * grounding conductors of its conduits, with the reel that the cutting plan takes each from.
 */
export function pullSchedule(site: Site, plan: Pulled): readonly ScheduledPull[] {
  return [...feederPulls(site), ...branchPulls(site, plan)];
}

const upwards = (feet: number): number => Math.ceil(feet - 1e-9);

function feederPulls(site: Site): readonly ScheduledPull[] {
  const nodes = new Map(treeOf(site).nodes.map((node) => [node.feeder?.id, node]));
  const { waste, allowance } = site.rules;
  return feederConduits(site, tablesOf(site.rules)).flatMap((conduit): ScheduledPull[] => {
    const { feeder, method, tradeSize, length, conductors } = conduit;
    const node = nodes.get(feeder.id);
    if (feeder.existing === true || node === undefined) return [];
    const { volts, phases } = node.primary ?? node.system;
    const lines = lineColors(phases === 3 ? 'ABC' : 'AB', volts);
    const { sets, metal } = feeder.conductor;
    const colors = conductors.flatMap(({ use, count }): readonly string[] =>
      use === 'line' ? [...lines, ...(count > lines.length ? [neutralColor(volts)] : [])] : [GROUNDING_COLOR],
    );
    return Array.from({ length: sets }, (_, set) => ({
      of: feeder.id,
      kind: 'feeder' as const,
      from: feeder.from,
      to: feeder.to,
      through: [`${racewaySpec(method, tradeSize)}, set ${set + 1} of ${sets}`],
      conductors: conductors.map(
        ({ size, insulation, count }) => `${count} x ${conductorSpec(size, metal, insulation)}`,
      ),
      colors,
      feet: upwards((length + 2 * allowance.equipment) * (1 + waste.conductor)),
      reels: [],
    }));
  });
}

function branchPulls({ chargers, rules }: Site, plan: Pulled): readonly ScheduledPull[] {
  const reelOf = reels(plan);
  const volts = new Map(chargers.map(({ id, volts: own }) => [id, own]));
  const phases = new Map(plan.circuits.map(({ charger, phases: own }) => [charger, own]));
  const pullOf = (specs: readonly string[], of: string): readonly string[] =>
    specs.flatMap((spec) => {
      const reel = reelOf.get(`${spec}\n${of}`);
      return reel === undefined ? [] : [`${spec.split(', ').at(-1)} ${reel}`];
    });
  const greens = new Map(
    plan.takeoff
      .filter(({ item }) => item === 'grounding conductor')
      .flatMap(({ spec, parts }) => parts.map(({ of, quantity }) => [of, { spec, feet: quantity }] as const)),
  );
  return plan.branches.flatMap(({ homeRuns }) =>
    homeRuns.flatMap(({ circuits, conduits }): ScheduledPull[] => {
      const byLength = [...circuits].sort((a, b) => b.way.run.conductorLength! - a.way.run.conductorLength!);
      const lines = byLength.map(({ charger, from, conductor, pilot, conduits: through, way }): ScheduledPull => {
        const spec = conductorSpec(conductor.size, conductor.metal, conductor.insulation);
        const colors = lineColors(phases.get(charger)!, volts.get(charger)!);
        const wire = conductorSpec('14', 'copper', rules.insulation);
        const specs = [...colors.map((color) => `${spec}, ${color}`), ...(pilot ? [`${wire}, ${PILOT_COLOR}`] : [])];
        return {
          of: charger,
          kind: 'circuit',
          from,
          to: way.charger.drop,
          through,
          conductors: [`${colors.length} x ${spec}`, ...(pilot ? [`1 x ${wire}`] : [])],
          colors: [...colors, ...(pilot ? [PILOT_COLOR] : [])],
          feet: upwards(way.run.conductorLength!),
          reels: pullOf(specs, charger),
        };
      });
      const grounds = conduits.flatMap((conduit, i): ScheduledPull[] => {
        const green = greens.get(conduit.id);
        if (green === undefined) return [];
        // It goes on through what is only coupled on.
        let last = i;
        while (conduits[last + 1] !== undefined && !greens.has(conduits[last + 1]!.id)) last++;
        return [
          {
            of: conduit.id,
            kind: 'grounding',
            from: conduit.from,
            to: conduits[last]!.to,
            through: conduits.slice(i, last + 1).map(({ id }) => id),
            conductors: [`1 x ${green.spec.replace(/,[^,]*$/, '')}`],
            colors: [GROUNDING_COLOR],
            feet: upwards(green.feet),
            reels: pullOf([green.spec], conduit.id),
          },
        ];
      });
      return [...lines, ...grounds];
    }),
  );
}

/** The number of the reel that a piece is cut from, by its spec and what it is for. */
function reels(plan: Pulled): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { item, spec, stocks } of cutPlan(plan))
    if (item === 'conductor')
      stocks.forEach(({ pieces }, n) => {
        for (const { of } of pieces) numbers.set(`${spec}\n${of}`, n + 1);
      });
  return numbers;
}
