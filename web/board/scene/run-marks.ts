import { chargersAnew, phasesAt } from '../../../calc/plan/compared/plan-difference.ts';
import type { UncountedPlan } from '../../../calc/plan/plan-shape.ts';
import type { PhasePair } from '../../../calc/plan-file/branches.ts';
import { copied } from '../../../routing/kept/changed-places.ts';
import type { Run } from '../../../routing/network/run.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Site } from '../../../routing/site/site.ts';
import { lanesOf } from './lanes.ts';
import type { RunMark } from './mark.ts';

/**
 * A mark for every run, path or none; runs stand in the order of the chargers. `last`: the plan before, its chargers the
 * same, and its marks.
 */
export function runMarks(
  { chargers }: Site,
  plan: UncountedPlan,
  last: { readonly plan: UncountedPlan; readonly marks: readonly RunMark[] } | undefined,
): readonly RunMark[] {
  const changed = last && chargersAnew(plan, last.plan, chargers);
  const at = (i: number): RunMark => {
    const phases = phasesAt(plan, chargers, i);
    const before = last?.marks[i];
    const run = plan.runs[i]!;
    return before?.run === run && before.phases === phases ? before : runMark(run, phases, chargers[i]?.volts ?? 0);
  };
  if (!last || !changed) return plan.runs.map((_, i) => at(i));
  let marks: RunMark[] | null = null;
  const places: number[] = [];
  for (const i of changed) {
    const mark = at(i);
    if (mark === last.marks[i]) continue;
    marks ??= last.marks.slice();
    marks[i] = mark;
    places.push(i);
  }
  return marks
    ? copied(
        marks,
        last.marks,
        places.sort((a, b) => a - b),
      )
    : last.marks;
}

const runMark = (run: Run, phases: PhasePair | null, volts: number): RunMark => ({
  list: 'runs',
  run,
  phases,
  charger: run.charger,
  path: run.path,
  lanes: phases ? lanesOf(phases, volts) : [],
  ok: run.ok,
  ...boxOf(run.path.map(inPlan)),
});
