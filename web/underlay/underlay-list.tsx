import type { Underlay } from '../../routing/site/site.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { changeUnderlay, reorderUnderlay } from './underlay-edits.ts';
import { useUnderlay, useUnderlayStore } from './underlay-store.ts';

/** The underlays of a site that has several, the highest first: which is spoken of, which are shown, and their order. */
export function UnderlayList({ underlays }: { readonly underlays: readonly Underlay[] }) {
  const document = useDocumentStore();
  const store = useUnderlayStore();
  const chosen = useUnderlay((state) => state.chosen);
  const lay = (from: number, to: number): void => {
    const { file, apply } = document.getState();
    if (apply(reorderUnderlay(file, from, to))) store.setState({ chosen: to, placing: null });
  };
  const show = (index: number, underlay: Underlay): void => {
    const { file, apply } = document.getState();
    const name = underlay.hidden ? 'Show underlay' : 'Hide underlay';
    apply(changeUnderlay(file, index, name, underlay, { hidden: !underlay.hidden }));
  };
  return (
    <ol className="underlay-list" aria-label="Underlays, the highest first">
      {underlays
        .map((underlay, index) => ({ underlay, index, name: named(underlay) }))
        .reverse()
        .map(({ underlay, index, name }) => (
          <li key={index}>
            <input
              type="checkbox"
              aria-label={`show ${name}`}
              checked={!underlay.hidden}
              onChange={() => show(index, underlay)}
            />
            <button
              type="button"
              className="plain underlay-name"
              aria-pressed={index === chosen}
              onClick={() => store.setState({ chosen: index, placing: null })}
            >
              {name}
            </button>
            <button
              type="button"
              className="plain"
              aria-label={`raise ${name}`}
              disabled={index === underlays.length - 1}
              onClick={() => lay(index, index + 1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="plain"
              aria-label={`lower ${name}`}
              disabled={index === 0}
              onClick={() => lay(index, index - 1)}
            >
              ↓
            </button>
          </li>
        ))}
    </ol>
  );
}

const named = ({ file, page }: Underlay): string => (page === undefined ? file : `${file}, page ${page}`);
