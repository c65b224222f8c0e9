import { LAYOUT_TOOLS, OTHER_TOOLS } from '../board/draw/tool-names.ts';
import { ACTIONS, type DrawToolName } from '../board/kinds/kinds.ts';

/** A key or a way of the hand, as the list shows it. */
export interface KeyRow {
  readonly key: string;
  readonly does: string;
  /** The keys that it stands for, as `Ctrl+Shift+z`, `ArrowUp`, `?`; none where it is the pointer's. */
  readonly presses: readonly string[];
}

const row = (key: string, does: string, ...presses: readonly string[]): KeyRow => ({ key, does, presses });

/** The letters of the actions that draw, and what they draw. */
function drawing(tools: readonly DrawToolName[]): KeyRow {
  const keys = tools.map((name) => ACTIONS[name].key);
  const draws = tools.map((name) => ACTIONS[name].draws);
  return row(keys.join(', '), `draw ${draws.join(', ')}`, ...keys.map((key) => key.toLowerCase()));
}

const ARROWS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const;
const shifted = ARROWS.map((arrow) => `Shift+${arrow}`);

/** Every key that the page takes, by where it does so. */
export const KEYS = [
  {
    where: 'Anywhere',
    rows: [
      row('Ctrl+Z', 'undo', 'Ctrl+z'),
      row('Ctrl+Shift+Z, Ctrl+Y', 'redo', 'Ctrl+Shift+z', 'Ctrl+y'),
      row('Ctrl+O', 'open a site file', 'Ctrl+o'),
      row('Ctrl+S', 'save it', 'Ctrl+s'),
      row('Ctrl+Shift+S', 'save it under another name', 'Ctrl+Shift+s'),
      row('?', 'this list', '?'),
    ],
  },
  {
    where: 'On the board',
    rows: [
      row('. and ,', 'go to the next element, or the one before', '.', ','),
      row('Arrows', 'nudge what is selected by 3 in. (metric: 0.1 m), or push the drawing', ...ARROWS),
      row('Shift+arrows', 'nudge by 1 ft (metric: 0.5 m)', ...shifted),
      row('Delete, Backspace', 'delete what is selected', 'Delete', 'Backspace'),
      row('Ctrl+A', 'select every drop', 'Ctrl+a'),
      row('Ctrl+C, X, V', 'copy, cut and paste elements, from one tab to another too; at the pointer'),
      row('F', 'show the whole lot, or the underlay of an empty one', 'f'),
      row('Shift+F', 'show what is selected', 'F'),
      row('G', 'go to a drop, a stall, a panel by its name', 'g'),
      row('Q', 'go to the nearest drop that is not yet set', 'q'),
      row('H', 'raise the drawing: heights straight up over the plan; and lay it flat again', 'h'),
      row('+ and -', 'zoom', '+', '=', '-'),
      row('J, N, M', 'select, pan, measure', 'j', 'n', 'm'),
      drawing(LAYOUT_TOOLS),
      drawing(OTHER_TOOLS),
      row(
        'Alt+1 to Alt+9',
        'snapping to ends, middles, crossings, perpendiculars, gridlines, members, right angles, alignment, grid: off and on',
        ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((figure) => `Alt+${figure}`),
      ),
      row('Space, held', 'push the drawing', ' '),
      row('Escape', 'stop, or select nothing', 'Escape'),
    ],
  },
  {
    where: 'While drawing',
    rows: [
      row(
        'Figures',
        'type the x and y of the first place, then a distance; Tab goes on to angle, x and y',
        ...[...'0123456789.('],
      ),
      row('T', 'type the x and y of the next place', 't'),
      row('Z', 'type an elevation: a raceway goes up or down to it', 'z'),
      row('X', 'the other side, or a quarter turn', 'x'),
      row('Arrows', 'move the drawing point by 1 ft (metric: 0.4 m), with Shift by 9 ft', ...ARROWS, ...shifted),
      row('Space', 'press at the drawing point', ' '),
      row('Enter', 'finish, then set; from a field of the form Ctrl+Enter', 'Enter'),
      row('Backspace, Delete', 'take back the last place', 'Backspace', 'Delete'),
      row('Escape', 'throw away what is being drawn', 'Escape'),
    ],
  },
  {
    where: 'By hand',
    rows: [
      row('Wheel', 'zoom to the pointer'),
      row('Space or right drag', 'push the drawing'),
      row('Drag on open ground', 'select what lies inside the box'),
      row('Shift+click', 'add to the selection, or take out of it'),
      row('Figures, T while dragging', 'type how far and which way, or the x and y to go to'),
      row('Shift while dragging', 'one way only'),
      row('Alt while dragging', 'no snapping'),
      row('Ctrl+drag', 'select what lies inside the path drawn round it'),
    ],
  },
] as const satisfies readonly { readonly where: string; readonly rows: readonly KeyRow[] }[];
