import type { Job } from '../kit/draft.ts';
import { feedersInPlan } from './feeders-on-plan.ts';

type NotedJob = Pick<Job, 'site' | 'parts'>;

const greyNote = ({ parts }: NotedJob): string =>
  `Thin grey is existing work and what others build; full ink is what this set installs. Symbols are not to scale${parts.has('legend') ? ': see the legend' : ''}.`;

/** What stands under the plan of the site where enlarged plans follow it: it names only sheets that the set has. */
export const planNotes = (job: NotedJob): readonly string[] => [
  ...(job.site.drops.length === 0 ? ['No drop stands on this site yet.'] : []),
  greyNote(job),
  `Conduit sizes stand beside each straight, a number in brackets where several lie side by side.${job.parts.has('conduits') ? ' Sizes not shown for want of room are in the conduit schedule.' : ''}`,
  ...(feedersInPlan(job.site).some(({ isRouted }) => !isRouted)
    ? ['Dotted feeders join what they feed: their length is given, their way is not drawn.']
    : []),
  `Field verify column and stripe positions before setting out. Written dimensions${job.parts.has('setting-out') ? ' and the setting-out schedule' : ''} govern; do not scale.`,
];

/** What stands under a plan from which drops are set out. */
export const fullNotes = (job: NotedJob): readonly string[] => [
  `Dimensions are to the middle of boxes and retractors; strings are rounded one by one. ${
    job.parts.has('setting-out')
      ? 'A figure that is not shown for want of room is in the setting-out schedule, which governs.'
      : 'Where a figure has no room ask for it: do not scale.'
  }`,
  'Beside each drop: its number, then panel and spaces of its circuits behind the colors of their lines.',
  `Beside each conduit: its name${job.parts.has('conduits') ? ' in the conduit schedule' : ''} and its size, a number in brackets where several alike lie side by side.${
    job.parts.has('strips') ? ' A name that has no room here is on the run strips.' : ''
  }`,
  greyNote(job),
];
