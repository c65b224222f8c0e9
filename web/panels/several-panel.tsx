import { wordFor } from '../document/edits/in-words.ts';
import type { Ref } from '../document/element-lists.ts';
import { useDocument } from '../document/use-document.ts';
import { Fact, Facts, Links } from './facts.tsx';
import { SharedFields } from './shared-fields.tsx';

/** Several things at once: what they are, and the fields that they share. */
export function SeveralPanel() {
  const selection = useDocument((state) => state.selection);
  const lists = [...new Set(selection.map(({ list }) => list))];
  return (
    <>
      <Facts>
        {lists.map((list) => (
          <Fact key={list} name={wordFor(list)}>
            <Links ids={idsOf(selection, list)} />
          </Fact>
        ))}
      </Facts>
      <SharedFields selection={selection} />
    </>
  );
}

const idsOf = (refs: readonly Ref[], list: Ref['list']): string[] => [
  ...new Set(refs.filter((ref) => ref.list === list).map(({ id }) => id)),
];
