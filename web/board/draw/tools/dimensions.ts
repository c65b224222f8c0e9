import { newId } from '../../../../routing/site/new-id.ts';
import { addElements } from '../../../document/edits/add.ts';
import type { DimensionOptions } from '../../kinds/dimensions.ts';
import { type DrawTool, lineOf } from '../draft.ts';

/** A dimension by the two places that it is measured between. */
export const dimensionTool: DrawTool<DimensionOptions> = {
  shape: 'line',
  atOnce: true,
  list: 'dimensions',
  edit: ({ file }, draft, { offset }) => {
    const line = lineOf(draft);
    if (!line) return null;
    return addElements(file, 'dimensions', [{ id: newId(file, 'DIM'), from: line[0], to: line[1], offset }]);
  },
  words: () => [],
  advice: (draft) => ({
    action: 'Dimension',
    next: draft.spots.length === 0 ? 'Press where it is measured from.' : 'Press where it is measured to.',
    keys: [
      ['0-9', 'length'],
      ['X', 'other side'],
      ['Esc', draft.spots.length === 0 ? 'select' : 'throw away'],
    ],
  }),
  turned: ({ offset }) => ({ offset: -offset }),
};
