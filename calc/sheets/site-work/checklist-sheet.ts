import type { Site } from '../../../routing/site/site.ts';
import { checklistOf, type LineState } from '../../field/checklist/checklist.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** How a line stands, as a sheet says it: it never says that anything complies. */
export const LINE_STATE_WORDS: Readonly<Record<LineState, string>> = {
  open: 'open',
  ok: 'ok',
  deviates: 'DEVIATES',
  noted: 'noted',
};

/** What a state means, for the foot of a sheet. */
export const STATE_NOTE =
  'ok: what was recorded is as expected; DEVIATES: it is not; noted: the plan has nothing to hold it against; open: nothing is recorded. None of it says that the work complies.';

/** The inspection checklist: what, where, by which rule, what is expected, and what was recorded by whom and when. */
export const checklistSheet = (site: Site, plan: Plan): readonly (readonly Cell[])[] => [
  ['of', 'what', 'where', 'checked against', 'expected', 'recorded', 'by', 'on', 'state'],
  ...checklistOf(site, plan).map(({ of, what, where, rule, expects, recorded, by, on, state, conflict }): Cell[] => [
    of,
    what,
    where || null,
    rule,
    expects || null,
    conflict ? `${recorded} (two say different things)` : recorded,
    by || null,
    on || null,
    LINE_STATE_WORDS[state],
  ]),
  [],
  [STATE_NOTE],
  [CAUTIONS],
];
