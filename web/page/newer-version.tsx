import { useState } from 'react';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { otherTabs, takeNewer, useKeptPage } from '../kept-page/kept-page.ts';
import { usePageActions } from '../page-state/page-actions.ts';

/** Offers a newer version of the page that is ready; it is taken when the person says so, and never before. */
export function NewerVersion() {
  const document = useDocumentStore();
  const { settle } = usePageActions();
  const newer = useKeptPage((state) => state.newer);
  const nowhere = useDocument((state) => state.keeping.kind === 'failed' && !state.saved.inFile);
  const [put, setPut] = useState<ServiceWorker | null>(null);
  if (!newer || newer === put) return null;
  const take = async (): Promise<void> => {
    const others = await otherTabs();
    if (others > 0)
      document
        .getState()
        .notify(`Overrow is open in ${others} more ${others === 1 ? 'tab' : 'tabs'}: close them, then load it here.`);
    else {
      await settle();
      takeNewer();
    }
  };
  return (
    <p className="notice">
      A newer version of Overrow is ready.{' '}
      {nowhere ? (
        'Your work is kept nowhere: save it to a file before you load it.'
      ) : (
        <>
          Your work stays.{' '}
          <button type="button" className="plain" onClick={() => void take()}>
            Load it
          </button>
        </>
      )}{' '}
      <button type="button" className="plain" onClick={() => setPut(newer)}>
        Later
      </button>
    </p>
  );
}
