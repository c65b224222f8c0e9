import { baysOn, type CanopyBays, canopyBays } from '../../../../routing/propose/rows/canopy-bays.ts';
import { lineLetter, lineNumber, withLines } from '../../../../routing/propose/rows/gridline-labels.ts';
import { printLength } from '../../../../routing/site/feet-inches.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { joinEdits } from '../../../document/edit.ts';
import { addAll } from '../../../document/edits/add.ts';
import { newIds } from '../../../document/edits/new-id.ts';
import { setGridlines } from '../../../document/edits/set.ts';
import { type Draft, type DrawTool, lineOf } from '../draft.ts';
import type { CanopyOptions } from '../options.ts';

/** Canopy bays along a line: columns, beams and purlins, and reference lines through the columns. */
export const canopyTool: DrawTool<CanopyOptions> = {
  shape: 'line',
  atOnce: false,
  list: 'columns',
  edit: ({ file, site }, draft, options) => {
    const canopy = canopyOf(draft, options);
    if (!canopy) return null;
    const { columnSize, columnHeight } = options;
    const columnIds = newIds(file, 'C', canopy.columns.length);
    const beamIds = newIds(file, 'B', canopy.beams.length);
    const purlinIds = newIds(file, 'PU', canopy.purlins.length);
    const name = `Add a canopy of ${canopy.bays} ${canopy.bays === 1 ? 'bay' : 'bays'}`;
    const frame = addAll(file, name, {
      columns: canopy.columns.map(({ at, rotation }, i) => ({
        id: columnIds[i]!,
        at,
        size: [columnSize, columnSize],
        ...(rotation % 90 !== 0 && { rotation }),
        height: columnHeight,
      })),
      ...(canopy.beams.length + canopy.purlins.length > 0 && {
        members: [
          ...canopy.beams.map((beam, i) => ({ id: beamIds[i]!, ...beam })),
          ...canopy.purlins.map((purlin, i) => ({ id: purlinIds[i]!, ...purlin })),
        ],
      }),
    });
    const lines = options.gridlines ? gridlinesWith(site, canopy) : null;
    return lines ? joinEdits(name, frame, setGridlines(file, lines)) : frame;
  },
  words: ({ site }, draft, options) => {
    const canopy = canopyOf(draft, options);
    if (!canopy) return [];
    const { spacing } = options;
    const bays = `${canopy.bays} ${canopy.bays === 1 ? 'bay' : 'bays'} of ${printLength(spacing, site.units)}`;
    const slanting = options.gridlines && !canopy.lines ? ['slanting: no gridlines'] : [];
    return [bays, `${canopy.columns.length} columns, ${printLength(canopy.bays * spacing, site.units)}`, ...slanting];
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
  turned: (options) => ({ ...options, side: options.side === 'left' ? 'right' : 'left' }),
};

/** The canopy that a draft and its options come to. */
export function canopyOf(draft: Draft, options: CanopyOptions): CanopyBays | null {
  const line = lineOf(draft);
  if (!line) return null;
  const [from, to] = line;
  return canopyBays(from, to, baysOn(Math.hypot(to[0] - from[0], to[1] - from[1]), options.spacing), options);
}

/** Numbers along the canopy and letters across it, as the lines that stand already go on. */
function gridlinesWith({ gridlines }: Site, { lines }: CanopyBays): Site['gridlines'] | null {
  if (!lines) return null;
  const standing = numberedAxis(gridlines) ?? lines.numbered;
  const places = lines.numbered === 'x' ? { x: lines.along, y: lines.across } : { x: lines.across, y: lines.along };
  return {
    x: withLines(gridlines.x, places.x, standing === 'x' ? lineNumber : lineLetter),
    y: withLines(gridlines.y, places.y, standing === 'y' ? lineNumber : lineLetter),
  };
}

function numberedAxis({ x, y }: Site['gridlines']): 'x' | 'y' | null {
  const isNumber = ({ label }: { readonly label: string }): boolean => /^\d/.test(label);
  if (x.length > 0) return x.every(isNumber) ? 'x' : 'y';
  return y.length > 0 ? (y.every(isNumber) ? 'y' : 'x') : null;
}
