import { useEffect, useMemo, useState } from 'react';
import type { SiteFile } from '../../routing/site/site.ts';
import { frameRefs } from '../board/framing.ts';
import type { Painting } from '../board/painting/painting.ts';
import { ViewProvider, type ViewStore } from '../board/view-store.ts';
import { openDroppedFiles } from '../document/dropped-files.ts';
import { alternativeName } from '../document/files/alternative-name.ts';
import { sample } from '../document/files/samples.ts';
import type { SiteKeeping } from '../document/keeping/site-keeping.ts';
import type { DocumentStore } from '../document/store.ts';
import { DocumentProvider } from '../document/use-document.tsx';
import { ActionsProvider, type PageActions } from '../page-state/page-actions.ts';
import { PageProvider, type PageStore } from '../page-state/page-store.ts';
import { whenAsked } from '../page-state/when-asked.tsx';
import { attachKeysToBoard } from '../parts/keys-to-board.ts';
import { showFocus } from '../parts/seen-focus.ts';
import { UnderlayHost } from '../underlay/underlay-host.tsx';
import { failureWords } from '../words/failure-words.ts';
import { Announcer } from './announcer.tsx';
import { DeskStation } from './desk.tsx';
import { Dialogs } from './dialogs.tsx';
import { Head } from './head.tsx';
import { Notice } from './notice.tsx';
import { attachPageKeys } from './page-keys.ts';

const PrintSheet = whenAsked(async () => (await import('../print/print-sheet.tsx')).PrintSheet);

interface PageProps {
  readonly store: DocumentStore;
  readonly view: ViewStore;
  readonly page: PageStore;
  readonly painting: Painting;
  readonly keeping: Promise<SiteKeeping>;
}

/** The whole page: head, board with its tables, ledger. */
export function Page({ store, view, page, painting, keeping }: PageProps) {
  const [over, setOver] = useState(false);

  const actions = useMemo(
    (): PageActions => ({
      reveal: (refs) => {
        if (refs.length === 0) return;
        store.getState().select(refs);
        view.setState({ pin: null });
        frameRefs(view, painting.scene(), refs);
        document.querySelector('.board')?.scrollIntoView({ block: 'nearest' });
      },
      openSample: async (name) => {
        try {
          await store.getState().openFile(await sample(name));
        } catch (error) {
          store.getState().notify(`The sample was not opened: ${failureWords(error)}`);
        }
      },
      kept: async () => (await keeping).list(),
      reopen: async (doc) => (await keeping).reopen(doc),
      siteOf: async (doc) => {
        await (await keeping).flush();
        return (await keeping).siteOf(doc);
      },
      settle: async () => (await keeping).flush(),
      keeping: () => keeping,
      branch: async () => {
        const { file } = store.getState();
        return openNamed(await keeping, store, file, (taken) => alternativeName(file.name, [...taken, file.name]));
      },
      openBeside: async (file) =>
        openNamed(await keeping, store, file, (taken) =>
          taken.includes(file.name) ? alternativeName(file.name, taken) : file.name,
        ),
    }),
    [store, view, painting, keeping],
  );

  useEffect(() => openDroppedFiles(document, store, setOver), [store]);
  useEffect(() => attachPageKeys(store, page), [store, page]);
  useEffect(() => attachKeysToBoard(), []);
  // A link may bring records, which who opens it takes in or not, or name a pull card.
  useEffect(() => {
    const heed = (): void => {
      const { hash } = location;
      if (hash.startsWith('#records=')) page.setState({ records: true });
      if (hash.startsWith('#card=')) page.setState({ card: { link: hash } });
    };
    heed();
    addEventListener('hashchange', heed);
    return () => removeEventListener('hashchange', heed);
  }, [page]);
  useEffect(() => showFocus(document), []);
  // What was taken back or done again is shown where it happened.
  useEffect(
    () =>
      store.subscribe((state, before) => {
        const change = state.lastChange;
        if (change && change !== before.lastChange && change.how !== 'done')
          frameRefs(view, painting.scene(), change.refs);
      }),
    [store, view, painting],
  );
  // A pin points at the run that is selected; it goes with the selection.
  useEffect(
    () =>
      store.subscribe((state, before) => {
        if (state.selection !== before.selection && view.getState().pin) view.setState({ pin: null });
      }),
    [store, view],
  );

  return (
    <DocumentProvider value={store}>
      <PageProvider value={page}>
        <ViewProvider value={view}>
          <ActionsProvider value={actions}>
            <UnderlayHost painting={painting}>
              <Head painting={painting} />
              <DeskStation painting={painting} />
              <Notice />
              <Announcer />
              <Dialogs />
              <PrintSheet painting={painting} />
            </UnderlayHost>
            {over && <div className="drop-here">Let go to open it</div>}
          </ActionsProvider>
        </ViewProvider>
      </PageProvider>
    </DocumentProvider>
  );
}

/** Opens a site under a name that none of the kept ones has; the open one and it are both written down. */
async function openNamed(
  sites: SiteKeeping,
  store: DocumentStore,
  file: SiteFile,
  nameAmong: (taken: readonly string[]) => string,
): Promise<boolean> {
  await sites.holdOn();
  const taken = [...(await sites.list()), ...(await sites.bin())].map(({ name }) => name);
  if (!(await store.getState().openFile({ ...file, name: nameAmong(taken) }))) return false;
  await sites.holdOn();
  return true;
}
