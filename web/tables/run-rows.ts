import { type Margins, marginsOf } from '../../calc/plan/margins.ts';
import type { UncountedPlan } from '../../calc/plan/plan-shape.ts';
import type { Circuit, Conduit } from '../../calc/plan-file/branches.ts';
import { kept } from '../../routing/kept/kept.ts';
import type { Run } from '../../routing/network/run.ts';
import type { Site } from '../../routing/site/site.ts';

/** One charger as the table of runs shows it. */
export interface RunRow {
  readonly charger: string;
  readonly drop: string;
  readonly run: Run;
  readonly margins: Margins | undefined;
  readonly circuit: Circuit | undefined;
  /** The conduit in which it leaves its equipment. */
  readonly conduit: Conduit | undefined;
}

export const runRows = kept((plan: UncountedPlan, site: Site): readonly RunRow[] => {
  const margins = marginsOf(plan, site);
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const conduits = new Map(plan.conduits.map((conduit) => [conduit.id, conduit]));
  return plan.runs.map((run) => {
    const circuit = circuits.get(run.charger);
    return {
      charger: run.charger,
      drop: run.drop,
      run,
      margins: margins.get(run.charger),
      circuit,
      conduit: conduits.get(circuit?.conduits[0] ?? ''),
    };
  });
});
