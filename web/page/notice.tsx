import { useEffect } from 'react';
import type { Alert } from '../document/document-state.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { LongWork } from '../long-work/long-work.tsx';
import { NewerVersion } from './newer-version.tsx';

const STAYS_MS = 8000;

/** What the page has to say in passing, and long work under way. */
export function Notice() {
  const document = useDocumentStore();
  const notice = useDocument((state) => state.notice);
  const busy = useDocument((state) => state.busy);
  const alerts = useDocument((state) => state.alerts);

  useEffect(() => {
    if (!notice) return;
    const gone = setTimeout(() => document.getState().notify(null), STAYS_MS);
    return () => clearTimeout(gone);
  }, [notice, document]);

  return (
    <div className="notices" role="status" aria-live="polite">
      {busy && (
        <p className="notice">
          {busy.what} <progress max={busy.of || 1} value={busy.done} aria-label={busy.what} />
        </p>
      )}
      <LongWork />
      <NewerVersion />
      {notice && (
        <p className="notice">
          {notice}{' '}
          <button type="button" className="plain" onClick={() => document.getState().notify(null)}>
            Close
          </button>
        </p>
      )}
      {alerts.map((alert) => (
        <AlertWords key={alert.says} alert={alert} />
      ))}
    </div>
  );
}

/** What must be answered or closed; it does not go of itself. */
function AlertWords({ alert: { says, acts = [] } }: { readonly alert: Alert }) {
  const document = useDocumentStore();
  const close = (): void => document.getState().unwarn(says);
  return (
    <div className="notice alert">
      <p>{says}</p>
      <div className="alert-acts">
        {acts.map(({ name, act }) => (
          <button
            key={name}
            type="button"
            onClick={() => {
              close();
              act();
            }}
          >
            {name}
          </button>
        ))}
        <button type="button" className="plain" onClick={close}>
          Close
        </button>
      </div>
    </div>
  );
}
