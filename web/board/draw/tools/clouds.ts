import { newId } from '../../../../routing/site/new-id.ts';
import { addElements } from '../../../document/edits/add.ts';
import type { CloudOptions } from '../../kinds/clouds.ts';
import type { DrawTool } from '../draft.ts';
import { draftOutline, outlineTool } from './areas.ts';

/** A revision cloud by its corners. */
export const cloudTool: DrawTool<CloudOptions> = {
  ...outlineTool('Cloud', 'clouds'),
  edit: ({ file }, draft, { mark }) => {
    const outline = draftOutline(draft);
    return outline && addElements(file, 'clouds', [{ id: newId(file, 'CL'), outline, mark }]);
  },
};
