import { COUNTING } from '../../calc/plan/counting.ts';
import type { Plan, UncountedPlan } from '../../calc/plan/plan-shape.ts';
import { countWith } from './planning.ts';

// Where this is imported, plans have their takeoff and what hangs.
countWith(COUNTING);

/** A plan with its takeoff and what hangs: a file that imports this brings the script that works them out. */
export const withCounts = (plan: UncountedPlan): Plan => plan as Plan;
