import type { Run } from '../../../routing/network/run.ts';
import { LINES } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { LineVolts } from '../../plan-file/supply.ts';
import { addDraw, PER_BUS } from '../../supply/load-flow/draws.ts';
import { magnitudeAt } from '../../supply/load-flow/phasor.ts';
import { drawsOf } from '../../supply/load-flow/seats.ts';
import { linesOn, voltsAt } from '../../supply/load-flow/supply-report.ts';
import { solve } from '../../supply/load-flow/sweep.ts';
import { supplyWork } from '../../supply/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';

/** A piece of equipment while some chargers give less than all: volts of the side that its chargers hang on. */
export interface EquipmentAtTime {
  readonly id: string;
  /** Line to line. */
  readonly nominal: number;
  readonly volts: LineVolts;
  /** The least volts between two of the lines that it has. */
  readonly lowest: number;
  /** Amperes out of that side, on the line that carries most. */
  readonly amps: number;
}

/**
 * The supply while each charger gives so many amperes, with the loads that are drawn on: the same solution as the plan's,
 * at the amperes of a step of a day. What management would hold back is in those amperes already.
 * @param amps by charger; one that is not in it gives nothing
 */
export function supplyAtTime(
  site: Site,
  runs: readonly Run[],
  tables: CodeTables,
  amps: ReadonlyMap<string, number>,
): readonly EquipmentAtTime[] {
  const { tree, lines, model, seats } = supplyWork(site, runs, tables);
  const sums = new Float64Array(PER_BUS * model.buses.length);
  site.chargers.forEach(({ id }, i) => {
    addDraw(sums, seats.bus[i]!, LINES[seats.lines[i]!]!, amps.get(id) ?? 0, 0);
  });
  const draws = drawsOf(tree, model, lines, sums, site.loads, {
    powerFactor: site.rules.powerFactor,
    factor: 1,
    vaOf: ({ va, generation }) => (generation === true ? -va : va),
  });
  const { volts, out } = solve(model.buses, { ...draws, ceiling: draws.ceiling.fill(Infinity) });
  return tree.nodes.map((node, place): EquipmentAtTime => {
    const bus = model.loadBus[place]!;
    const own = voltsAt(volts, bus, node.system, linesOn({ lines }, node));
    const pairs = [own.AB, own.BC, own.CA].filter((one) => one > 0);
    return {
      id: node.equipment.id,
      nominal: node.system.volts,
      volts: own,
      lowest: Math.min(...pairs),
      amps: Math.max(...[0, 1, 2].map((line) => magnitudeAt(out, 3 * bus + line))),
    };
  });
}
