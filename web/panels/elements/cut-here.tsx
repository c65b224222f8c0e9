import type { NamedCut } from '../../../calc/space/section/typical.ts';
import { newId } from '../../../routing/site/new-id.ts';
import type { DocumentState } from '../../document/document-state.ts';
import { addElements } from '../../document/edits/add.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';

/** Cuts a section through what is selected and selects the cut. */
export function CutHere({ cut }: { readonly cut: (state: DocumentState) => NamedCut | null }) {
  const document = useDocumentStore();
  const keeps = useDocument(keepsDrawing);
  if (keeps) return null;
  return (
    <p>
      <button
        type="button"
        className="plain"
        onClick={() => {
          const state = document.getState();
          const named = cut(state);
          if (!named) return;
          const id = newId(state.file, 'SEC');
          state.apply(addElements(state.file, 'sections', [{ id, ...named }]));
          state.select([{ list: 'sections', id }]);
        }}
      >
        Cut a section here
      </button>
    </p>
  );
}
