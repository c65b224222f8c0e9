import { reopen } from './bring-back.ts';
import type { SiteDatabase } from './database.ts';
import type { DocumentEvent, Keeping } from './document-state.ts';
import { catchUp, stepBack } from './following.ts';
import type { History } from './history.ts';
import { type Journal, newJournal } from './journal.ts';
import type { Keeper, Role } from './keeper.ts';
import * as says from './keeping-words.ts';
import { clearUnchanged, holdOn } from './kept-sites.ts';
import { keptWork } from './kept-work.ts';
import { type OwnFile, ownFileOf } from './own-file.ts';
import type { PageWorld } from './page-world.ts';
import { littleLeft } from './room.ts';
import type { SiteKeeping } from './site-keeping.ts';
import { startKeeping } from './start-keeping.ts';
import type { DocumentStore } from './store.ts';
import { type Claim, HAND_OVER_MS } from './tabs.ts';
import { createWriter, type Wrote } from './writer.ts';

/**
 * Keeps the open document in the browser from now on, after bringing back the one that was open. Nothing is written
 * before that has ended. Resolves also where the browser keeps nothing: the store's `keeping` says so.
 */
export async function keepSites(store: DocumentStore, world: PageWorld): Promise<SiteKeeping> {
  const { tabs } = world;
  const keeping = (next: Keeping): void => store.setKeeping(next);
  const listeners = new Set<(doc: string | null) => void>();
  let loading = true;
  let persisted: boolean | null = null;
  let saidNearlyFull = false;

  const changed = (doc: string | null): void => {
    for (const listener of listeners) listener(doc);
  };
  const work = keptWork({
    database: () => keeper.database,
    openDoc: () => (keeper.role.kind === 'none' ? null : keeper.role.doc),
    tabs,
    now: world.now,
    newDocument: world.newDocument,
    changed,
  });
  const keeper: Keeper = {
    ...{ store, world, work, take, writing, begin, lost, sayKept, see, changed },
    ...{ database: null, role: { kind: 'none' }, early: null, ownFile: {}, highest: 0, unread: null, stopped: false },
  };

  function see(unwatched: Promise<unknown>): void {
    unwatched.catch((error: unknown) => {
      if (keeper.database) keeping({ kind: 'failed', says: says.failureSays(error) });
    });
  }

  const unlisten = store.listen(hear);
  tabs.hear((message) => {
    const { doc } = message;
    const { role } = keeper;
    if (message.kind === 'listed') changed(doc);
    else if (message.kind === 'wrote') {
      changed(doc);
      keeper.highest = Math.max(keeper.highest, message.order ?? 0);
      if (role.kind === 'watching' && role.doc === doc && message.seq > role.seq) see(catchUp(keeper));
    } else if (message.kind === 'hand-over' && role.kind === 'writing' && role.doc === doc) {
      see(stepBack(keeper, doc, 2 * HAND_OVER_MS).then(() => tabs.tell({ kind: 'handed-over', doc })));
    }
  });

  function hear(event: DocumentEvent): void {
    if (event.what === 'open') {
      keeper.ownFile = ownFileOf(event);
      if (loading) keeper.early = keeper.ownFile;
      else see(begin(event.history, keeper.ownFile));
      return;
    }
    if (event.what === 'saved') keeper.ownFile = ownFileOf(event);
    if (keeper.role.kind === 'writing') {
      if (store.getState().keeping.kind === 'kept') keeping({ kind: 'writing' });
      keeper.role.writer.note(event);
    } else if (loading) keeper.early = {};
  }

  async function take(next: Role): Promise<void> {
    const before = keeper.role;
    keeper.role = next;
    if (next.kind !== 'none') {
      loading = false;
      // What is opened because the kept work could not be read must not come before it at the next start.
      if (!keeper.unread) world.tabDocument.set(next.doc);
    }
    if (before.kind === 'watching') before.callOff.abort();
    if (before.kind !== 'writing') return;
    await before.writer.flush();
    before.writer.stop();
    before.claim?.release();
  }

  function writing(open: SiteDatabase, journal: Journal, history: History, claim: Claim | null): Role {
    const { doc } = journal.document;
    const writer = createWriter(open, journal, history, world.now, (wrote) => told(doc, wrote));
    return { kind: 'writing', doc, writer, claim };
  }

  async function begin(history: History, from: OwnFile, least = 0): Promise<void> {
    const { database } = keeper;
    if (!database) return;
    const doc = world.newDocument();
    const { name } = history.file;
    const saved = store.getState().saved.inFile ? { savedSeq: 0 } : {};
    const edits = Math.max(least, history.done.length);
    keeper.highest += 1;
    const document = { doc, name, edits, at: world.now(), order: keeper.highest, ...from, ...saved };
    const next = writing(database, newJournal(document), history, null);
    const left = take(next);
    keeping({ kind: 'writing' });
    if (next.kind !== 'writing') return;
    await next.writer.flush();
    const claim = await tabs.claim(doc, 'if-free', () => lost(doc));
    if (keeper.role === next) next.claim = claim;
    else claim?.release();
    await left;
    if (keeper.database && keeper.role === next) {
      // Tidying up may fail where reading does; the open site is kept all the same.
      clearUnchanged(keeper.database, tabs, doc).then(
        () => changed(null),
        () => {},
      );
    }
  }

  async function fork(): Promise<void> {
    await begin(store.getState().committed(), {}, 1);
    store.getState().notify(says.FORKED);
  }

  function told(doc: string, wrote: Wrote): void {
    const { role, unread } = keeper;
    if (role.kind !== 'writing' || role.doc !== doc) return;
    if (wrote.kind === 'conflict') see(fork());
    else if (wrote.kind === 'failed') keeping({ kind: 'failed', says: says.failureSays(wrote.error) });
    else {
      const { name, seq, edits, at, order } = wrote.document;
      if (!unread || edits > 0) {
        world.mirror.set({ doc, name, edits, at });
        world.tabDocument.set(doc);
      }
      tabs.tell({ kind: 'wrote', doc, seq, ...(order !== undefined && { order }) });
      if (role.writer.isBehind()) keeping({ kind: 'writing' });
      else sayKept();
      changed(doc);
      if (edits > 0) see(askToPersist());
      if (wrote.snapshot) see(lookAtRoom());
    }
  }

  function sayKept(): void {
    keeping({ kind: 'kept', ...(persisted === false && { says: says.MAY_CLEAR }) });
  }

  async function askToPersist(): Promise<void> {
    if (persisted !== null) return;
    // Until it is answered, so that it is asked once.
    persisted = true;
    persisted = await world.persist().catch(() => false);
    if (store.getState().keeping.kind === 'kept') sayKept();
  }

  /** Says once that room runs short, while there is still some. */
  async function lookAtRoom(): Promise<void> {
    const left = littleLeft(await world.room().catch(() => null));
    if (left === null || saidNearlyFull) return;
    saidNearlyFull = true;
    const acts = [{ name: 'Save all kept sites in one file', act: () => void saveAll() }];
    store.getState().warn({ says: says.nearlyFullSays(left), acts });
  }

  async function saveAll(): Promise<void> {
    try {
      await flush();
      const day = new Date(world.now()).toLocaleDateString('en-CA');
      world.handOut(`kept-sites-${day}.json`, await work.bundle());
    } catch (error) {
      store.getState().notify(says.bundleFailedSays(error));
    }
  }

  const flush = async (): Promise<void> => {
    if (keeper.role.kind === 'writing') await keeper.role.writer.flush();
  };

  /** What this tab did not know of is kept as a document of its own. */
  function lost(doc: string): void {
    const { role } = keeper;
    if (role.kind !== 'writing' || role.doc !== doc) return;
    if (!role.writer.isBehind()) {
      see(stepBack(keeper, doc, 0));
      return;
    }
    role.writer.stop();
    see(fork());
  }

  const resumed = await startKeeping(keeper);
  loading = false;
  if (keeper.role.kind === 'none' && keeper.early) await begin(store.getState().committed(), keeper.early);
  if (keeper.role.kind === 'none' && store.getState().keeping.kind === 'loading') keeping({ kind: 'off' });
  if (keeper.database) see(lookAtRoom());
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

  return {
    ...work,
    resumed: resumed || keeper.early !== null,
    reopen: (doc) => reopen(keeper, doc),
    holdOn: async () => {
      await flush();
      const { database, role } = keeper;
      if (database && role.kind !== 'none') await holdOn(database, role.doc);
    },
    health: async () => {
      const document = keeper.role.kind === 'writing' ? keeper.role.writer.document() : null;
      const agreed = await world.persisted().catch(() => false);
      return {
        room: await world.room().catch(() => null),
        persisted: agreed || persisted,
        wroteAt: document && store.getState().keeping.kind === 'kept' ? document.at : null,
        savedAt: document?.savedAt ?? null,
      };
    },
    saveAll,
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    flush,
    stop: async () => {
      keeper.stopped = true;
      unlisten();
      await take({ kind: 'none' });
      tabs.close();
      keeper.database?.close();
    },
  };
}
