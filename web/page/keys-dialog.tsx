import { Dialog } from '../parts/dialog.tsx';
import { Scroller } from '../parts/scroller.tsx';
import { KEYS } from './key-list.ts';
import { PageVersion } from './page-version.tsx';

/** What each key does. */
export function KeysDialog({ close }: { readonly close: () => void }) {
  return (
    <Dialog title="Keys" onClose={close}>
      <Scroller className="dialog-scroll keys-list" aria-label="Keys by place">
        {KEYS.map(({ where, rows }) => (
          <section key={where} aria-label={where}>
            <h3>{where}</h3>
            <dl className="facts">
              {rows.map(({ key, does }) => (
                <div key={key}>
                  <dt>
                    <kbd>{key}</kbd>
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </Scroller>
      <PageVersion />
    </Dialog>
  );
}
