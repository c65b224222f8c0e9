import { useView, useViewStore } from '../board/view-store.ts';
import { Dialog } from './dialog.tsx';
import { Scroller } from './scroller.tsx';

const KEYS: readonly (readonly [where: string, keys: readonly (readonly [key: string, does: string])[]])[] = [
  [
    'Anywhere',
    [
      ['Ctrl+Z', 'undo'],
      ['Ctrl+Shift+Z', 'redo'],
      ['Ctrl+O', 'open a site file'],
      ['Ctrl+S', 'save it'],
      ['Ctrl+Shift+S', 'save it under another name'],
      ['?', 'this list'],
    ],
  ],
  [
    'On the board',
    [
      ['. and ,', 'go to the next element, or the one before'],
      ['Arrows', 'nudge what is selected by 3 in. (metric: 0.1 m), or push the drawing'],
      ['Shift+arrows', 'nudge by 1 ft (metric: 0.5 m)'],
      ['Delete', 'delete what is selected'],
      ['Ctrl+A', 'select every drop'],
      ['Ctrl+C, X, V', 'copy, cut and paste elements, from one tab to another too; at the pointer'],
      ['F', 'show the whole lot'],
      ['Shift+F', 'show what is selected'],
      ['+ and -', 'zoom'],
      ['V, H, M', 'select, pan, measure'],
      ['S, C, E, R, D', 'draw stalls, a canopy, equipment, a raceway, drops'],
      ['K, A, P, B, O', 'draw a keep-out, an aisle, a pull point, a beam or purlin, a column'],
      ['Escape', 'stop, or select nothing'],
    ],
  ],
  [
    'While drawing',
    [
      ['Figures', 'type a distance; Tab goes on to the angle'],
      ['Z', 'type an elevation: a raceway goes up or down to it'],
      ['X', 'the other side, or a quarter turn'],
      ['Arrows', 'move the drawing point by 1 ft (metric: 0.4 m), with Shift by 9 ft'],
      ['Space', 'press at the drawing point'],
      ['Enter', 'finish, then set; from a field of the form Ctrl+Enter'],
      ['Backspace', 'take back the last place'],
      ['Escape', 'throw away what is being drawn'],
      [
        'Alt+1 to Alt+9',
        'snapping to ends, middles, crossings, perpendiculars, gridlines, members, right angles, alignment, grid: off and on',
      ],
    ],
  ],
  [
    'By hand',
    [
      ['Wheel', 'zoom to the pointer'],
      ['Space or right drag', 'push the drawing'],
      ['Drag on open ground', 'select what lies inside the box'],
      ['Shift+click', 'add to the selection, or take out of it'],
      ['Shift while dragging', 'one way only'],
      ['Alt while dragging', 'no snapping'],
      ['Ctrl+drag', 'select what lies inside the path drawn round it'],
    ],
  ],
];

export function KeysDialog() {
  const view = useViewStore();
  const open = useView((state) => state.help);
  if (!open) return null;
  return (
    <Dialog title="Keys" onClose={() => view.setState({ help: false })}>
      <Scroller className="dialog-scroll keys-list" aria-label="Keys by place">
        {KEYS.map(([where, keys]) => (
          <section key={where} aria-label={where}>
            <h3>{where}</h3>
            <dl className="facts">
              {keys.map(([key, does]) => (
                <div key={key}>
                  <dt>
                    <kbd>{key}</kbd>
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </Scroller>
    </Dialog>
  );
}
