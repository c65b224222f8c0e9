import type { Ref } from '../../document/change/element-lists.ts';
import { inWords, wordFor } from '../../document/edits/in-words.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { GroundWays } from '../elements/drops/ground-ways.tsx';
import { Fact, Facts, Links } from '../facts/facts.tsx';
import { SharedFields } from './shared-fields.tsx';

/** Several things at once: what they are, and the fields that they share. */
export function SeveralPanel() {
  const document = useDocumentStore();
  const selection = useDocument((state) => state.selection);
  const lists = [...new Set(selection.map(({ list }) => list))];
  return (
    <>
      <Facts>
        {lists.map((list) => (
          <Fact key={list} name={wordFor(list)}>
            <Links ids={idsOf(selection, list)} />
            {lists.length > 1 && (
              <button
                type="button"
                className="plain only"
                onClick={() => document.getState().select(selection.filter((ref) => ref.list === list))}
              >
                Only {count(idsOf(selection, list).length, list)}
              </button>
            )}
          </Fact>
        ))}
      </Facts>
      <SharedFields selection={selection} />
      <GroundWays drops={idsOf(selection, 'drops')} />
    </>
  );
}

/** `the 28 stalls`, `the column`. */
const count = (many: number, list: Ref['list']): string =>
  many === 1
    ? `the ${wordFor(list)}`
    : `the ${inWords(Array.from({ length: many }, (_, i) => ({ list, id: String(i) })))}`;

const idsOf = (refs: readonly Ref[], list: Ref['list']): string[] => [
  ...new Set(refs.filter((ref) => ref.list === list).map(({ id }) => id)),
];
