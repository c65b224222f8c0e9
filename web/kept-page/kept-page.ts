import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** How the browser keeps the files of the page, so that it opens without a network. */
interface KeptPage {
  /** Whether all of them are kept: not yet, or not here (a host without encryption, a browser that refuses). */
  readonly kept: 'yes' | 'not yet' | 'no';
  /** A newer version that is kept whole, and is used once it is taken; null where there is none. */
  readonly newer: ServiceWorker | null;
}

export const keptPageStore = createStore<KeptPage>(() => ({ kept: 'not yet', newer: null }));

export const useKeptPage = <T>(choose: (state: KeptPage) => T): T => useStore(keptPageStore, choose);

/** What version of the page this is. */
export const pageVersion = (): string =>
  document.querySelector<HTMLMetaElement>('meta[name=version]')?.content ?? 'under development';

const LOOK_EVERY_MS = 3_600_000;
const TAB = 'overrow.page';

/**
 * Has the browser keep every file of this version of the page. A newer version is fetched beside it, told of, and used
 * only when it is taken: an open tab goes on with its own files, even with those that it has not loaded yet.
 */
export async function keepPage(): Promise<void> {
  // Tabs are counted by a lock that each shares for as long as it stands.
  void navigator.locks?.request(TAB, { mode: 'shared' }, () => new Promise(() => undefined)).catch(() => undefined);
  const registration = import.meta.env.PROD
    ? await navigator.serviceWorker?.register('./sw.js', { updateViaCache: 'none' }).catch(() => undefined)
    : undefined;
  if (!registration) {
    keptPageStore.setState({ kept: 'no' });
    return;
  }
  const look = (): void =>
    keptPageStore.setState({
      kept: registration.active ? 'yes' : 'not yet',
      newer: registration.active ? registration.waiting : null,
    });
  const follow = (worker: ServiceWorker | null): void => worker?.addEventListener('statechange', look);
  look();
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - looked < LOOK_EVERY_MS) return;
    looked = Date.now();
    // Without a network there is nothing newer to be found.
    registration.update().catch(() => undefined);
  });
}

/** How many other tabs have this page open; 0 where the browser cannot tell. */
export async function otherTabs(): Promise<number> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return Math.max(0, held.filter(({ name }) => name === TAB).length - 1);
}

/** Uses the newer version from now on: this tab is loaded anew in it. */
export function takeNewer(): void {
  const { newer } = keptPageStore.getState();
  if (!newer) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  newer.postMessage({ type: 'SKIP_WAITING' });
}
