import type { RowShape } from '../../../../routing/propose/rows/row-shape.ts';
import { ACCESSIBLE_SLOTS } from '../../../../routing/propose/rows/row-slots.ts';

/** One row of stalls 9 x 18 ft, square to its line and on its left. */
export const PLAIN_ROW: RowShape = {
  width: 9,
  depth: 18,
  angle: 90,
  lean: 'forward',
  rows: 'one',
  aisle: 24,
  line: 'entry',
  side: 'left',
  uses: new Map(),
  ...ACCESSIBLE_SLOTS,
};
