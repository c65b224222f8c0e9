import { takeAsBuilt } from '../../document/edits/records/draw-as-built.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePhone } from '../../parts/phone.ts';

/** At the desk, and only there: what was measured is drawn, in one step that is taken back like any other. */
export function TakenIntoDesign() {
  const document = useDocumentStore();
  const file = useDocument((state) => state.file);
  const phone = usePhone();
  if (phone) return null;
  const edit = takeAsBuilt(file);
  return (
    <section aria-label="Into the design">
      <h3>Into the design</h3>
      <p className="quiet">
        {edit.steps.length === 0
          ? 'Every drop that was measured is drawn where it was found.'
          : `${edit.steps.length} drops were found elsewhere than they are drawn. Until they are taken in, the drawing stays as it is.`}
      </p>
      <div className="records-acts">
        <button type="button" disabled={edit.steps.length === 0} onClick={() => document.getState().apply(edit)}>
          Take as built into the design
        </button>
      </div>
    </section>
  );
}
