import type { Site } from '../../routing/site/site.ts';
import type { PlanFile } from '../plan-file/plan-file.ts';
import { steadyData } from '../words/steady.ts';
import type { Plan } from './plan-shape.ts';
import { writePlan } from './write-plan.ts';

/** The plan as it is handed out, with numbers that are the same in every engine. */
export const publishedPlan = (plan: Plan, site: Site): PlanFile => steadyData(writePlan(plan, site));
