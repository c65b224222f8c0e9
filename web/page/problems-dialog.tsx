import type { DocumentState } from '../document/document-state.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Scroller } from '../parts/scroller.tsx';

/** Why a file was not opened: every error with its place. The open site stands as it was. */
export function ProblemsDialog({ title, errors }: NonNullable<DocumentState['problems']>) {
  const document = useDocumentStore();
  const name = useDocument((state) => state.name);
  return (
    <Dialog title={title} onClose={() => document.getState().dismissProblems()}>
      <p>
        {errors.length === 1 ? 'One thing is' : `${errors.length} things are`} wrong with it. {name} stays open as it
        was.
      </p>
      <Scroller className="dialog-scroll" aria-label="Errors">
        <table className="problems">
          <thead>
            <tr>
              <th scope="col">where</th>
              <th scope="col">what</th>
            </tr>
          </thead>
          <tbody>
            {errors.map(({ place, says }, i) => (
              <tr key={i}>
                <th scope="row">{place || 'the file'}</th>
                <td>{says}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
    </Dialog>
  );
}
