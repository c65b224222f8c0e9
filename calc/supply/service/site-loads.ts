import type { Run } from '../../../routing/network/run.ts';
import type { Charger, Load, Site } from '../../../routing/site/site.ts';
import type { ChargerLoad, LineTriple, LoadCalculation, ManagedLoad } from '../../plan-file/loads.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import type { Draws } from '../load-flow/draws.ts';
import { magnitudeAt } from '../load-flow/phasor.ts';
import { drawsOf } from '../load-flow/seats.ts';
import { withoutImpedance } from '../load-flow/supply-model.ts';
import { type Solved, solve } from '../load-flow/sweep.ts';
import { ratingOf } from '../panels/demand.ts';
import type { SupplyWork } from '../supply.ts';
import { chargerLoad, loadCalculation } from './load-calculation.ts';
import { ampsAt, placeOfLoad, placesBeyond, servicesOf } from './services.ts';
import { voltageSteps } from './voltage-steps.ts';

/**
 * The load of each service of a site, by its source: line currents from the solution of the whole supply at nominal volts,
 * so that single-phase chargers count on the lines they lie on and nested ceilings hold.
 * @param only the source whose load alone is told and returned; all where it is not given
 */
export function siteLoads(
  site: Site,
  runs: readonly Run[],
  work: SupplyWork,
  tables: CodeTables,
  tell: Tell = SILENT,
  only?: string,
): readonly LoadCalculation[] {
  const solved = solvedLoads(site.loads, work, site.rules.powerFactor);
  return work.tree.nodes.flatMap(({ parent, equipment: { id } }, root) =>
    parent >= 0 || (only !== undefined && only !== id) ? [] : [loadOf(site, runs, work, solved, root, tables, tell)],
  );
}

interface SolvedLoads {
  readonly connected: Solved;
  readonly unit: Solved;
}

/** What the state of a supply does not hold: everything on unheld, and least loads counted once. */
function solvedLoads(
  loads: readonly Load[],
  { tree, model, lines, state }: SupplyWork,
  powerFactor: number,
): SolvedLoads {
  const open = withoutImpedance(model.buses);
  const drawn = (load: Load): number => (load.generation === true ? 0 : load.va);
  const counted = (load: Load): number => drawn(load) * (load.demand ?? 1);
  const draws = (amps: Float64Array, vaOf: (load: Load) => number): Draws =>
    drawsOf(tree, model, lines, amps, loads, { powerFactor, factor: 1, vaOf });
  const connected = draws(state.sums.amps, drawn);
  return {
    connected: solve(open, { ...connected, ceiling: connected.ceiling.map(() => Infinity) }),
    unit: solve(open, draws(state.sums.unitAmps, counted)),
  };
}

function loadOf(
  site: Site,
  runs: readonly Run[],
  work: SupplyWork,
  solved: SolvedLoads,
  root: number,
  tables: CodeTables,
  tell: Tell,
): LoadCalculation {
  const { tree, model, state, seats } = work;
  const nodes = tree.nodes;
  const here = placesBeyond(tree, root);
  const services = servicesOf(tree, root);
  const own = site.chargers.flatMap((charger, i) =>
    here.has(seats.node[i]!) ? [{ charger, node: seats.node[i]!, i }] : [],
  );
  const running = own.filter(({ i }) => (runs[i]?.length ?? null) !== null);
  const loads = site.loads.flatMap((load) => {
    const place = tree.placeOf.get(load.from) ?? -1;
    return here.has(place) ? [{ load, place }] : [];
  });
  const at = placeOfLoad(tree, services, root, [...own.map(({ node }) => node), ...loads.map(({ place }) => place)]);
  const { system } = nodes[at]!;
  const lines = ({ out }: Solved): LineTriple => {
    const bus = 3 * model.loadBus[at]!;
    return [magnitudeAt(out, bus), magnitudeAt(out, bus + 1), magnitudeAt(out, bus + 2)];
  };
  const kvaOf = ({ volts, out }: Solved): number => apparentKva(volts, out, model.loadBus[at]!);
  const chargers = groupsOf(running, work, tables);
  const drawing = loads.filter(({ load }) => load.generation !== true).map(({ load }) => load);
  const { existingAmps } = nodes[root]!.equipment;
  return loadCalculation(
    tables,
    {
      source: nodes[root]!.equipment.id,
      at: nodes[at]!.equipment.id,
      volts: system.volts,
      phases: system.phases,
      service: services.map((place) => {
        const rating = ratingOf(tree, place);
        const { id, kind } = nodes[place]!.equipment;
        return {
          id,
          ratingAmps: rating === undefined ? null : ampsAt(tree, rating, place, at),
          taken: kind !== 'service',
        };
      }),
      chargers: chargers,
      withoutRun: own.length - running.length,
      managed: managedOf(running, work, here, tables),
      loads: drawing.map(({ id, name, va, continuous, demand, motor }) => ({
        id,
        name,
        va,
        continuous,
        ...(demand === undefined ? {} : { demand }),
        ...(motor === true ? { motor } : {}),
      })),
      generationVa: loads.reduce((sum, { load }) => sum + (load.generation === true ? load.va : 0), 0),
      existingAmps: existingAmps === undefined ? null : ampsAt(tree, existingAmps, root, at),
      largestStepVa: Math.max(
        0,
        ...chargers.map(({ nameplateVa, count }) => nameplateVa / count),
        ...drawing.map(({ va }) => va),
      ),
      steps: voltageSteps(
        work,
        root,
        running.map(({ charger, node, i }) => ({ charger, node, volts: seats.nominal[i]! })),
        site.rules.powerFactor,
      ),
      connected: { kva: kvaOf(solved.connected), once: lines(solved.connected) },
      nameplate: { kva: kvaOf(state.load), once: lines(state.load), design: lines(state.demand) },
      unit: { kva: kvaOf(solved.unit), once: lines(solved.unit), design: lines(state.unitDemand) },
    },
    tell,
  );
}

/** Apparent power out of a bus: the sum over its lines of volts to neutral times the conjugate of the amperes. */
function apparentKva(volts: Float64Array, amps: Float64Array, bus: number): number {
  let [watts, vars] = [0, 0];
  for (let line = 0; line < 3; line++) {
    const at = 6 * bus + 2 * line;
    const [vRe, vIm, aRe, aIm] = [volts[at]!, volts[at + 1]!, amps[at]!, amps[at + 1]!];
    watts += vRe * aRe + vIm * aIm;
    vars += vIm * aRe - vRe * aIm;
  }
  return Math.hypot(watts, vars) / 1000;
}

interface Running {
  readonly charger: Charger;
  readonly node: number;
  readonly i: number;
}

/** Chargers of one rating together, in the order of the first of each. */
function groupsOf(running: readonly Running[], { seats }: SupplyWork, tables: CodeTables): readonly ChargerLoad[] {
  const groups = new Map<string, { count: number; readonly one: Running }>();
  for (const one of running) {
    const key = `${one.charger.amps} ${seats.nominal[one.i]!} ${one.charger.phases}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { count: 1, one });
    else group.count++;
  }
  return [...groups.values()].map(({ count, one: { charger, i } }) =>
    chargerLoad(
      { count, amps: charger.amps, volts: seats.nominal[i]!, phases: charger.phases },
      tables.vehicleSupply.unitLoadVa,
    ),
  );
}

function managedOf(
  running: readonly Running[],
  work: SupplyWork,
  here: ReadonlySet<number>,
  tables: CodeTables,
): readonly ManagedLoad[] {
  const { nodes } = work.tree;
  return nodes.flatMap(({ equipment: { id, managedAmps }, system }, place): ManagedLoad[] => {
    if (managedAmps === undefined || !here.has(place)) return [];
    const behind = placesBeyond(work.tree, place);
    const groups = groupsOf(
      running.filter(({ node }) => behind.has(node)),
      work,
      tables,
    );
    const total = (field: 'nameplateVa' | 'unitVa'): number => groups.reduce((sum, group) => sum + group[field], 0);
    const ceilingVa = managedAmps * system.volts * (system.phases === 3 ? Math.sqrt(3) : 1);
    return [
      { equipment: id, amps: managedAmps, ceilingVa, nameplateVa: total('nameplateVa'), unitVa: total('unitVa') },
    ];
  });
}
