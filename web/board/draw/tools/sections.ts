import { newId } from '../../../../routing/site/new-id.ts';
import { addElements } from '../../../document/edits/add.ts';
import type { SectionOptions } from '../../kinds/sections.ts';
import { type DrawTool, lineOf } from '../draft.ts';

/** A section by its cut. */
export const sectionTool: DrawTool<SectionOptions> = {
  shape: 'line',
  atOnce: true,
  list: 'sections',
  edit: ({ file }, draft, { look }) => {
    const line = lineOf(draft);
    if (!line) return null;
    const id = newId(file, 'SEC');
    return addElements(file, 'sections', [{ id, name: `Section ${id.slice(3)}`, from: line[0], to: line[1], look }]);
  },
  words: () => [],
  advice: (draft) => ({
    action: 'Section',
    next: draft.spots.length === 0 ? 'Press where the cut begins.' : 'Press where it ends: one looks to its left.',
    keys: [
      ['0-9', 'length'],
      ['X', 'look the other way'],
      ['Esc', draft.spots.length === 0 ? 'select' : 'throw away'],
    ],
  }),
  turned: ({ look }) => ({ look: -look }),
};
