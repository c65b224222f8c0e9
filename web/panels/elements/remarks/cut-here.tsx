import { newId } from '../../../../routing/site/new-id.ts';
import { addElements } from '../../../document/edits/add.ts';
import { keepsDrawing } from '../../../document/field-work.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';
import { later } from '../../../page-state/when-asked.tsx';

const typical = later(() => import('../../../../calc/space/section/typical.ts'));

/** Cuts a section through what is selected and selects the cut. */
export function CutHere({ list, id }: { readonly list: 'drops' | 'equipment' | 'raceways'; readonly id: string }) {
  const document = useDocumentStore();
  const keeps = useDocument(keepsDrawing);
  if (keeps) return null;
  const cut = async (): Promise<void> => {
    const { sectionThrough } = await typical();
    const { site, plan, file, apply, select } = document.getState();
    const named = sectionThrough(site, plan, list, id);
    if (!named) return;
    const section = newId(file, 'SEC');
    apply(addElements(file, 'sections', [{ id: section, ...named }]));
    select([{ list: 'sections', id: section }]);
  };
  return (
    <p>
      <button type="button" className="plain" onClick={() => void cut()}>
        Cut a section here
      </button>
    </p>
  );
}
