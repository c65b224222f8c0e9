import { changeElements } from '../document/edits/change.ts';
import { wordFor } from '../document/edits/in-words.ts';
import type { Ref } from '../document/element-lists.ts';
import { useDocument, useDocumentStore } from '../document/use-document.ts';
import { Fact, Facts, Links } from './facts.tsx';
import { SharedFields } from './shared-fields.tsx';

/** Several things at once: what they are, and the fields that they share. */
export function SeveralPanel() {
  const document = useDocumentStore();
  const selection = useDocument((state) => state.selection);
  const lists = [...new Set(selection.map(({ list }) => list))];
  const change = (patch: Parameters<typeof changeElements>[2]): void => {
    const { file, apply } = document.getState();
    apply(changeElements(file, selection, patch));
  };
  return (
    <>
      <Facts>
        {lists.map((list) => (
          <Fact key={list} name={wordFor(list)}>
            <Links ids={idsOf(selection, list)} />
          </Fact>
        ))}
      </Facts>
      <SharedFields selection={selection} onChange={change} />
    </>
  );
}

const idsOf = (refs: readonly Ref[], list: Ref['list']): string[] => [
  ...new Set(refs.filter((ref) => ref.list === list).map(({ id }) => id)),
];
