import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/type.css';
import './styles/tokens.css';
import './styles/page.css';
import './styles/head.css';
import './styles/board.css';
import './styles/ledger.css';
import './styles/tables.css';
import './styles/strip.css';
import './styles/dialogs.css';
import './styles/coverage.css';
import './styles/loads.css';
import './styles/underlay.css';
import './styles/kept-work.css';
import './styles/phone.css';
import './styles/print.css';
import { readInk } from './board/painting/ink.ts';
import { createPainting } from './board/painting/painting.ts';
import { createViewStore } from './board/view-store.ts';
import { fileDialogs } from './document/files/files.ts';
import { pricesCome } from './document/files/price-store.ts';
import { DEFAULT_SAMPLE, sample } from './document/files/samples.ts';
import { pageWorld } from './document/keeping/page-world.ts';
import { keepSites } from './document/keeping/storage.ts';
import { createDocumentStore } from './document/store.ts';
import { keepPage } from './kept-page/kept-page.ts';
import { showFailure } from './page/failure-page.ts';
import { Page } from './page/page.tsx';
import { createPageStore } from './page-state/page-store.ts';
import { after, later, loadTheRest } from './page-state/when-asked.tsx';
import { afterFrame } from './parts/after-frame.ts';
import { PHONE } from './parts/phone.ts';
import { startTheme } from './parts/theme.ts';

/** Inside another page's frame clicks could be led astray, and the browser would keep the work apart. */
const FRAMED = 'Overrow does not run inside another page. Open it by its own address, in a tab of its own.';

/** Opens the page: the site that was open before, else the smallest sample. */
async function start(root: HTMLElement): Promise<void> {
  const store = createDocumentStore();
  const phone = matchMedia(PHONE).matches;
  const view = createViewStore();
  const page = createPageStore({ theme: startTheme(), drawer: phone ? 'setting-out' : null });
  if (phone) store.getState().setStation('build');
  const painting = createPainting(store, view, readInk(document.documentElement));
  // The lettering of the drawing is the page's: what was drawn before it came is drawn again.
  for (const weight of [400, 600, 700]) void document.fonts.load(`${weight} 12px Overpass`).then(painting.redraw);
  const counted = later(() => import('./document/counted-plan.ts'));
  later(pricesCome);
  later(fileDialogs);
  const mending = later(() => import('./proposal/offer-mends.ts'));
  const lettering = later(() => import('./sheets/keep-needed-faces.ts'));
  const keeping = keepSites(store, pageWorld());
  createRoot(root, { onUncaughtError: (error) => fail(root, error) }).render(
    <StrictMode>
      <Page store={store} view={view} page={page} painting={painting} keeping={keeping} />
    </StrictMode>,
  );
  const { resumed } = await keeping;
  if (root.dataset.failed) return;
  if (!resumed) await store.getState().openFile(await sample(DEFAULT_SAMPLE));
  root.dataset.ready = 'yes';
  // The facts of the lot wait for it; what does not come is asked for again with the rest.
  afterFrame(() => void counted().catch(() => undefined));
  // A page that cannot be kept stands all the same.
  keepPage().catch((error: unknown) => console.error(error));
  whenIdle(async () => {
    await loadTheRest();
    await mending().then(
      ({ offerMends }) => offerMends(store),
      () => undefined,
    );
    await lettering().then(
      ({ keepNeededFaces }) => keepNeededFaces(store),
      () => undefined,
    );
    root.dataset.rest = 'here';
  });
}

/** Not every browser tells when it is idle. */
const whenIdle = (work: () => Promise<void>): void => {
  if ('requestIdleCallback' in window) requestIdleCallback(() => void work(), { timeout: 5000 });
  else setTimeout(() => void work(), 1000);
};

/** A blank page would say nothing; the drawing library may still be busy with what it had begun. */
function fail(root: HTMLElement, error: unknown): void {
  console.error(error);
  setTimeout(() => showFailure(root, error));
}

const root = document.getElementById('page');
if (!root) throw new RangeError('the page has no place to stand');
if (window.top === window.self) {
  const started = start(root);
  after(started);
  started.catch((error: unknown) => fail(root, error));
} else root.textContent = FRAMED;
