import { baysOn, type CanopyBays, canopyBays } from '../../../../routing/propose/rows/canopy-bays.ts';
import { withCanopyLines } from '../../../../routing/propose/rows/canopy-gridlines.ts';
import type { RoofForm } from '../../../../routing/propose/rows/canopy-slope.ts';
import type { Side } from '../../../../routing/propose/rows/row-frame.ts';
import { newIds } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { joinEdits } from '../../../document/change/edit.ts';
import { addAll } from '../../../document/edits/add.ts';
import { setGridlines } from '../../../document/edits/set.ts';
import { type BoardDraft, type DrawTool, lineOf } from '../draft.ts';
import type { CanopyOptions } from '../options.ts';

/** Canopy bays along a line: columns, beams and purlins, and reference lines through the columns. */
export const canopyTool: DrawTool<CanopyOptions> = {
  shape: 'line',
  atOnce: false,
  list: 'columns',
  edit: ({ file, site }, draft, options) => {
    const canopy = canopyOf(draft, options);
    if (!canopy) return null;
    const { columnSize } = options;
    const columnIds = newIds(file, 'C', canopy.columns.length);
    const beamIds = newIds(file, 'B', canopy.beams.length);
    const purlinIds = newIds(file, 'PU', canopy.purlins.length);
    const name = `Add a canopy of ${counted(canopy.bays, 'bay')}`;
    const frame = addAll(file, name, {
      columns: canopy.columns.map(({ at, rotation, height }, i) => ({
        id: columnIds[i]!,
        at,
        size: [columnSize, columnSize],
        ...(rotation % 90 !== 0 && { rotation }),
        ...(height > 0 && { height }),
      })),
      ...(canopy.beams.length + canopy.purlins.length > 0 && {
        members: [
          ...canopy.beams.map((beam, i) => ({ id: beamIds[i]!, ...beam })),
          ...canopy.purlins.map((purlin, i) => ({ id: purlinIds[i]!, ...purlin })),
        ],
      }),
    });
    const lines = options.gridlines ? withCanopyLines(site.gridlines, canopy) : null;
    return lines ? joinEdits(name, frame, setGridlines(file, lines)) : frame;
  },
  words: ({ site }, draft, options) => {
    const canopy = canopyOf(draft, options);
    if (!canopy) return [];
    const { spacing } = options;
    const bays = `${counted(canopy.bays, 'bay')} of ${printLength(spacing, site.units)}`;
    const slanting =
      options.gridlines && !withCanopyLines(site.gridlines, canopy)
        ? ['not square to the gridlines: none through its columns']
        : [];
    return [
      bays,
      `${canopy.columns.length} columns, ${printLength(canopy.bays * spacing, site.units)}`,
      ...heightWords(canopy, options.form, site.units),
      ...slanting,
    ];
  },
  advice: (draft) => {
    if (draft.whole)
      return {
        action: 'Canopy',
        next: 'Change it beside the board, then set it.',
        keys: [
          ['Enter', 'set'],
          ['Esc', 'throw away'],
        ],
      };
    if (draft.spots.length > 0)
      return {
        action: 'Canopy',
        next: 'Press where the line of columns ends, or type its length.',
        keys: [
          ['0-9', 'length'],
          ['Backspace', 'back'],
          ['Alt', 'no snapping'],
        ],
      };
    return { action: 'Canopy', next: 'Drag along the line of columns.', keys: [['Esc', 'select']] };
  },
  turned: (options) => {
    const other = (side: Side): Side => (side === 'left' ? 'right' : 'left');
    // What one sees turn: the second line of columns, or the way that the only line's canopy rises.
    const rises = options.form === 'one slope' ? other(options.rises) : options.rises;
    return { ...options, side: other(options.side), rises };
  },
};

/** The canopy that a draft and its options come to. */
export function canopyOf(draft: BoardDraft, options: CanopyOptions): CanopyBays | null {
  const line = lineOf(draft);
  if (!line) return null;
  const [from, to] = line;
  return canopyBays(from, to, baysOn(Math.hypot(to[0] - from[0], to[1] - from[1]), options.spacing), options);
}

/** From the lowest edge of the beams to the highest. */
function heightWords({ beams }: CanopyBays, form: RoofForm, units: Units): string[] {
  if (form === 'flat' || beams.length === 0) return [];
  const heights = beams.flatMap(({ from, to }) => [from[2], to[2]]);
  return [
    `${form}, beams from ${printLength(Math.min(...heights), units)} to ${printLength(Math.max(...heights), units)}`,
  ];
}
