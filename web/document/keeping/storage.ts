import type { DocumentStore } from '../store.ts';
import * as says from './keeping-words.ts';
import { keptWork } from './kept-list/kept-work.ts';
import { lasting } from './lasting.ts';
import type { PageWorld } from './page-world.ts';
import { reopen } from './roles/bring-back.ts';
import { hear, hearTab } from './roles/hearing.ts';
import { flush, type Keeper, keepsNone, take } from './roles/keeper.ts';
import { startKeeping } from './roles/start-keeping.ts';
import { begin, lost, writing } from './roles/writing.ts';
import type { Health, SiteKeeping } from './site-keeping.ts';
import { holdOn } from './store/kept-sites.ts';

/**
 * Keeps the open document in the browser from now on, after bringing back the one that was open. Nothing is written
 * before that has ended. Resolves also where the browser keeps nothing: the store's `keeping` says so.
 */
export async function keepSites(store: DocumentStore, world: PageWorld): Promise<SiteKeeping> {
  const listeners = new Set<(doc: string | null) => void>();
  const keeper = newKeeper(store, world, (doc) => {
    for (const listener of listeners) listener(doc);
  });
  const { work } = keeper;
  const unlisten = store.listen((event) => hear(keeper, event));
  world.tabs.hear((message) => hearTab(keeper, message));

  const resumed = await startKeeping(keeper);
  if (keeper.role.kind === 'starting') keeper.role = { kind: 'none' };
  if (keeper.role.kind === 'none' && keeper.early) await begin(keeper, store.getState().committed(), keeper.early);
  if (keeper.role.kind === 'none' && store.getState().keeping.kind === 'loading') store.setKeeping({ kind: 'off' });
  if (keeper.database) keeper.see(keeper.lasting.lookAtRoom());
  watchLeaving(keeper);

  return {
    ...work,
    resumed: resumed || keeper.early !== null,
    reopen: (doc) => reopen(keeper, doc),
    holdOn: async () => {
      await flush(keeper);
      const { database, role } = keeper;
      if (database && !keepsNone(role)) await holdOn(database, role.doc);
    },
    health: () => healthOf(keeper),
    askToLast: () => keeper.lasting.ask(),
    saveAll: () => saveAll(keeper),
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    flush: () => flush(keeper),
    stop: async () => {
      keeper.stopped = true;
      unlisten();
      await take(keeper, { kind: 'none' });
      world.tabs.close();
      keeper.database?.close();
    },
  };
}

/** A keeper that has not looked yet for what was kept. */
function newKeeper(store: DocumentStore, world: PageWorld, changed: Keeper['changed']): Keeper {
  const keeper: Keeper = {
    ...{ store, world, changed },
    ...{
      database: null,
      role: { kind: 'starting' },
      early: null,
      ownFile: {},
      highest: 0,
      unread: null,
      stopped: false,
    },
    lasting: lasting(store, world, () => saveAll(keeper)),
    work: keptWork({
      database: () => keeper.database,
      openDoc: () => (keepsNone(keeper.role) ? null : keeper.role.doc),
      tabs: world.tabs,
      now: world.now,
      newDocument: world.newDocument,
      changed,
    }),
    take: (next) => take(keeper, next),
    writing: (...of) => writing(keeper, ...of),
    begin: (...of) => begin(keeper, ...of),
    lost: (doc) => lost(keeper, doc),
    sayKept: () => keeper.lasting.sayKept(),
    see: (unwatched) => {
      unwatched.catch((error: unknown) => {
        if (keeper.database) store.setKeeping({ kind: 'failed', says: says.failureSays(error) });
      });
    },
  };
  return keeper;
}

/** Writes down what waits when the page may be about to go, and has the browser ask where work is nowhere else. */
function watchLeaving(keeper: Keeper): void {
  const { store, world, see } = keeper;
  const flushInHaste = (): void => {
    if (keeper.role.kind === 'writing') see(keeper.role.writer.flush('haste'));
  };
  world.onLeaving(flushInHaste);
  world.askBeforeLeaving(() => {
    flushInHaste();
    const { keeping: now, saved, committed } = store.getState();
    const { done, undone } = committed();
    const isNowhere = now.kind === 'failed' || now.kind === 'off' || now.kind === 'loading';
    return isNowhere && !saved.inFile && done.length + undone.length > 0;
  });
}

async function healthOf({ role, store, world, lasting: lasts }: Keeper): Promise<Health> {
  const document = role.kind === 'writing' ? role.writer.document() : null;
  const agreed = await world.persisted().catch(() => false);
  return {
    room: await world.room().catch(() => null),
    persisted: agreed || lasts.persisted(),
    wroteAt: document && store.getState().keeping.kind === 'kept' ? document.at : null,
    savedAt: document?.savedAt ?? null,
  };
}

async function saveAll(keeper: Keeper): Promise<void> {
  const { store, world, work } = keeper;
  try {
    await flush(keeper);
    const day = new Date(world.now()).toLocaleDateString('en-CA');
    world.handOut(`kept-sites-${day}.json`, await work.bundle());
  } catch (error) {
    store.getState().notify(says.bundleFailedSays(error));
  }
}
