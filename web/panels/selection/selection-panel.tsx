import { deleteElements } from '../../document/edits/delete.ts';
import { inWords, wordFor } from '../../document/edits/in-words.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { BuildPanel } from '../as-built/build-panel.tsx';
import { ChargeSelected } from '../draw/charge-selected.tsx';
import { PANEL_KINDS } from '../elements/kinds.tsx';
import { NameField } from '../elements/name-field.tsx';
import { AnewSection } from './anew.tsx';
import { Arrange } from './arrange.tsx';
import { Renumber } from './renumber.tsx';
import { SeveralPanel } from './several-panel.tsx';

/** The ledger with something selected: its fields, its margins, and what it is part of. */
export function SelectionPanel() {
  const document = useDocumentStore();
  const selection = useDocument((state) => state.selection);
  const keeps = useDocument(keepsDrawing);
  const [first] = selection;
  if (!first) return null;
  const one = selection.every(({ list, id }) => list === first.list && id === first.id);
  const { form: Panel } = PANEL_KINDS[first.list];
  return (
    <div className="panel" data-testid="selection-panel">
      <header className="panel-head">
        <h2>{one ? first.id : inWords(selection)}</h2>
        {one && <span className="quiet">{wordFor(first.list)}</span>}
        <span className="panel-acts">
          {!keeps && (
            <button
              type="button"
              className="other-act"
              onClick={() => {
                const { file, apply } = document.getState();
                apply(deleteElements(file, selection));
              }}
            >
              Delete
            </button>
          )}
          <button type="button" className="other-act" onClick={() => document.getState().select([])}>
            To the lot
          </button>
        </span>
      </header>
      {keeps ? (
        one && <BuildPanel key={`${first.list} ${first.id}`} list={first.list} id={first.id} />
      ) : (
        <>
          <ChargeSelected />
          {one ? <Panel key={`${first.list} ${first.id}`} id={first.id} /> : <SeveralPanel />}
          {one && <NameField key={first.id} list={first.list} id={first.id} />}
          <AnewSection />
          <Renumber />
          <Arrange />
        </>
      )}
    </div>
  );
}
