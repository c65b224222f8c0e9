import { changeElements } from '../document/edits/change.ts';
import { wordFor } from '../document/edits/in-words.ts';
import type { Ref } from '../document/element-lists.ts';
import { useDocument, useDocumentStore } from '../document/use-document.ts';
import { Fact, Facts, Links } from './facts.tsx';
import { LengthField } from './fields.tsx';

/** Several things at once: what they are, and the fields that they share. */
export function SeveralPanel() {
  const document = useDocumentStore();
  const selection = useDocument((state) => state.selection);
  const site = useDocument((state) => state.site);
  const lists = [...new Set(selection.map(({ list }) => list))];
  const drops = selection.every(({ list }) => list === 'drops');
  const change = (patch: Parameters<typeof changeElements>[2]): void => {
    const { file, apply } = document.getState();
    apply(changeElements(file, selection, patch));
  };
  const ids = new Set(selection.map(({ id }) => id));
  const cords = new Set(site.drops.filter(({ id }) => ids.has(id)).map(({ cord }) => cord));
  return (
    <>
      <Facts>
        {lists.map((list) => (
          <Fact key={list} name={wordFor(list)}>
            <Links ids={idsOf(selection, list)} />
          </Fact>
        ))}
      </Facts>
      {drops && (
        <section className="fields" aria-label="Fields of all of them">
          <LengthField
            label="cord of each"
            value={cords.size === 1 ? [...cords][0]! : Number.NaN}
            least={0.1}
            onChange={(cord) => change({ cord })}
          />
        </section>
      )}
    </>
  );
}

const idsOf = (refs: readonly Ref[], list: Ref['list']): string[] => [
  ...new Set(refs.filter((ref) => ref.list === list).map(({ id }) => id)),
];
