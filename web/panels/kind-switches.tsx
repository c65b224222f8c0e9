import { KINDS } from '../../routing/site/kinds/kinds.ts';
import { boardKind, MARKED_LISTS } from '../board/kinds/kinds.ts';
import { useView, useViewStore } from '../board/view-store.ts';
import type { ListName } from '../document/change/element-lists.ts';

/** Kinds that the board shows, from the ground up. */
const SHOWN = MARKED_LISTS.map((list) => [list, boardKind(list).called ?? KINDS[list].many] as const);

/** Which kinds of elements are shown, and which the hand leaves alone. Only of this view, never of the file. */
export function KindSwitches() {
  const view = useViewStore();
  const hidden = useView((state) => state.hiddenKinds);
  const locked = useView((state) => state.lockedKinds);
  const turn = (part: 'hiddenKinds' | 'lockedKinds', kind: ListName): void => {
    const next = new Set(view.getState()[part]);
    if (!next.delete(kind)) next.add(kind);
    view.setState({ [part]: next });
  };
  const words = [hidden.size > 0 && `${hidden.size} hidden`, locked.size > 0 && `${locked.size} locked`].filter(
    Boolean,
  );
  return (
    <details className="kinds">
      <summary>Show and lock{words.length > 0 ? `: ${words.join(', ')}` : ''}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">kind</th>
            <th scope="col">shown</th>
            <th scope="col">locked</th>
          </tr>
        </thead>
        <tbody>
          {SHOWN.map(([kind, name]) => (
            <tr key={kind}>
              <th scope="row">{name}</th>
              <td>
                <input
                  type="checkbox"
                  aria-label={`Show ${name}`}
                  checked={!hidden.has(kind)}
                  onChange={() => turn('hiddenKinds', kind)}
                />
              </td>
              <td>
                <input
                  type="checkbox"
                  aria-label={`Lock ${name}`}
                  checked={locked.has(kind)}
                  onChange={() => turn('lockedKinds', kind)}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
