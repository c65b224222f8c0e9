import { dropAsBuilt } from '../../routing/site/place/as-built.ts';
import type { Drop, SiteFile } from '../../routing/site/site.ts';
import type { Edit, EditStep } from './change/edit.ts';
import type { DocumentData } from './document-state.ts';
import { alike } from './edits/gather.ts';
import { measuredAt } from './edits/records/marks-steps.ts';

/** Whether the hand leaves the drawing as it is: in the Build station it looks, measures, and writes down what it found. */
export const keepsDrawing = ({ station }: Pick<DocumentData, 'station'>): boolean => station === 'build';

/** What is told where an edit would change the drawing there. */
export const FIELD_ONLY =
  'Build keeps the drawing as it is: only what was measured is written down. Lay out changes it.';

/** Whether an edit may be made there: it writes records, or draws a drop where its record says that it was built. */
export const isFieldWork = (file: SiteFile, { steps }: Edit): boolean =>
  steps.every((step) => isRecordStep(file, step));

function isRecordStep(file: SiteFile, step: EditStep): boolean {
  if (step.kind === 'marks') return true;
  if (step.kind === 'set') return step.field === 'asBuilt' || step.field === 'records';
  if (step.kind !== 'change' || step.list !== 'drops') return false;
  const before = step.before as Drop;
  return alike(step.after, dropAsBuilt(before, measuredAt(file, before.id)));
}
