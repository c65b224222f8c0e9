import { usePage, usePageStore } from '../page-state/page-store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Scroller } from '../parts/scroller.tsx';
import { KEYS } from './key-list.ts';
import { PageVersion } from './page-version.tsx';

export function KeysDialog() {
  const page = usePageStore();
  const open = usePage((state) => state.help);
  if (!open) return null;
  return (
    <Dialog title="Keys" onClose={() => page.setState({ help: false })}>
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
