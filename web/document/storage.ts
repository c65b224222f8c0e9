import { readLogAfter, readStored, type SiteDatabase } from './database.ts';
import type { DocumentEvent, Keeping } from './document-state.ts';
import { fileNameOf } from './files.ts';
import type { History } from './history.ts';
import { inTime } from './in-time.ts';
import { foundJournal, type Journal, newJournal, unsureJournal } from './journal.ts';
import * as says from './keeping-words.ts';
import { clearUnchanged, holdOn, recordOf } from './kept-sites.ts';
import { type KeptWork, keptWork } from './kept-work.ts';
import { type KeptDocument, lastKept, type Remembered, readKept } from './last-kept.ts';
import { type OwnFile, ownFileOf } from './own-file.ts';
import type { PageWorld } from './page-world.ts';
import { recovered, replayed } from './recovery.ts';
import { littleLeft, type Room } from './room.ts';
import type { DocumentStore } from './store.ts';
import { askToHandOver, type Claim, HAND_OVER_MS } from './tabs.ts';
import { createWriter, type Writer, type Wrote } from './writer.ts';

export type { KeptSite } from './kept-work.ts';

/** Where the work is. */
export interface Health {
  readonly room: Room | null;
  /** The browser has agreed not to clear its store; null where it was not asked yet. */
  readonly persisted: boolean | null;
  /** When the open site was last written here, and when to its own file, by this machine's clock. */
  readonly wroteAt: number | null;
  readonly savedAt: number | null;
}

/** The keeping of sites in this browser. */
export interface SiteKeeping extends KeptWork {
  /** A site stands on the page: it was brought back, or opened while that was under way. */
  readonly resumed: boolean;
  /** Opens a kept site. False where it cannot be brought back. */
  readonly reopen: (doc: string) => Promise<boolean>;
  /** Keeps the open site even if it is never changed. */
  readonly holdOn: () => Promise<void>;
  readonly health: () => Promise<Health>;
  /** Hands out all kept sites in one file. */
  readonly saveAll: () => Promise<void>;
  /** Tells a listener of every kept site that changed, here or in another tab (null: several); returns the way to stop. */
  readonly onChange: (listener: (doc: string | null) => void) => () => void;
  /** Writes down everything at once. */
  readonly flush: () => Promise<void>;
  /** Writes down everything and keeps no more. */
  readonly stop: () => Promise<void>;
}

/** What this tab does with the document that it has open. */
type Role =
  | { readonly kind: 'none' }
  | { readonly kind: 'writing'; readonly doc: string; readonly writer: Writer; claim: Claim | null }
  | { readonly kind: 'watching'; readonly doc: string; seq: number; readonly callOff: AbortController };

/** So long the reading of what was kept may take before the page opens without it, in milliseconds. */
const READING_MS = 5_000;
/** Between tries at a store that failed; each time longer, up to the second. */
const FIRST_AGAIN_MS = 4_000;
const LAST_AGAIN_MS = 60_000;

/**
 * Keeps the open document in the browser from now on, after bringing back the one that was open. Nothing is written
 * before that has ended. Resolves also where the browser keeps nothing: the store's `keeping` says so.
 */
export async function keepSites(store: DocumentStore, world: PageWorld): Promise<SiteKeeping> {
  const { tabs } = world;
  const keeping = (next: Keeping): void => store.setKeeping(next);
  const notify = (notice: string): void => store.getState().notify(notice);
  const current = (): History => store.getState().committed();

  let database: SiteDatabase | null = null;
  let role: Role = { kind: 'none' };
  let loading = true;
  let early: OwnFile | null = null;
  let ownFile: OwnFile = {};
  let mayClear = false;
  let askedToPersist = false;
  let saidNearlyFull = false;
  let stopped = false;
  /** The order of the site that was taken up last, in any tab. */
  let highest = 0;
  /** What was kept could not be read: which it was is remembered, whatever is opened meanwhile. */
  let unread: Remembered | null = null;
  let again: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<(doc: string | null) => void>();
  const changed = (doc: string | null): void => {
    for (const listener of listeners) listener(doc);
  };
  const work = keptWork({
    database: () => database,
    openDoc: () => (role.kind === 'none' ? null : role.doc),
    tabs,
    now: world.now,
    newDocument: world.newDocument,
    changed,
  });

  /** Work that nobody waits for; where the store fails it, that is said. */
  function see(work: Promise<unknown>): void {
    work.catch((error: unknown) => {
      if (database) keeping({ kind: 'failed', says: says.failureSays(error) });
    });
  }

  const unlisten = store.listen(hear);
  tabs.hear((message) => {
    const { doc } = message;
    if (message.kind === 'listed') changed(doc);
    else if (message.kind === 'wrote') {
      changed(doc);
      highest = Math.max(highest, message.order ?? 0);
      if (role.kind === 'watching' && role.doc === doc && message.seq > role.seq) see(catchUp());
    } else if (message.kind === 'hand-over' && role.kind === 'writing' && role.doc === doc) {
      see(stepBack(doc, 2 * HAND_OVER_MS).then(() => tabs.tell({ kind: 'handed-over', doc })));
    }
  });

  function hear(event: DocumentEvent): void {
    if (event.what === 'open') {
      const from = ownFileOf(event);
      ownFile = from;
      if (loading) early = from;
      else see(begin(event.history, from));
      return;
    }
    if (event.what === 'saved') ownFile = ownFileOf(event);
    if (role.kind === 'writing') {
      if (store.getState().keeping.kind === 'kept') keeping({ kind: 'writing' });
      role.writer.note(event);
    } else if (loading) early = {};
  }

  /** Takes another role; resolves when the one before has been left in order. */
  async function take(next: Role): Promise<void> {
    const before = role;
    role = next;
    if (next.kind !== 'none') {
      loading = false;
      // What is opened because the kept work could not be read must not come before it at the next start.
      if (!unread) world.tabDocument.set(next.doc);
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

  /** Keeps a document under a name of its own. */
  async function begin(history: History, from: OwnFile, least = 0): Promise<void> {
    if (!database) return;
    const doc = world.newDocument();
    const { name } = history.file;
    const saved = store.getState().saved.inFile ? { savedSeq: 0 } : {};
    const edits = Math.max(least, history.done.length);
    highest += 1;
    const document = { doc, name, edits, at: world.now(), order: highest, ...from, ...saved };
    const next = writing(database, newJournal(document), history, null);
    const left = take(next);
    keeping({ kind: 'writing' });
    if (next.kind !== 'writing') return;
    await next.writer.flush();
    const claim = await tabs.claim(doc, 'if-free', () => lost(doc));
    if (role === next) next.claim = claim;
    else claim?.release();
    await left;
    if (database && role === next) see(clearUnchanged(database, tabs, doc).then(() => changed(null)));
  }

  async function fork(): Promise<void> {
    await begin(current(), {}, 1);
    notify(says.FORKED);
  }

  function told(doc: string, wrote: Wrote): void {
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
      keeping(role.writer.isBehind() ? { kind: 'writing' } : kept());
      changed(doc);
      if (edits > 0) see(askToPersist());
      if (wrote.snapshot) see(lookAtRoom());
    }
  }

  /** Says once that room runs short, while there is still some. */
  async function lookAtRoom(): Promise<void> {
    const left = littleLeft(await world.room().catch(() => null));
    if (left === null || saidNearlyFull) return;
    saidNearlyFull = true;
    const acts = [{ name: 'Save all kept sites in one file', act: () => see(saveAll()) }];
    store.getState().warn({ says: says.nearlyFullSays(left), acts });
  }

  async function saveAll(): Promise<void> {
    await flush();
    const day = new Date(world.now()).toLocaleDateString('en-CA');
    world.handOut(`kept-sites-${day}.json`, await work.bundle());
  }

  const flush = async (): Promise<void> => {
    if (role.kind === 'writing') await role.writer.flush();
  };

  const kept = (): Keeping => ({ kind: 'kept', ...(mayClear && { says: says.MAY_CLEAR }) });

  async function askToPersist(): Promise<void> {
    if (askedToPersist) return;
    askedToPersist = true;
    mayClear = !(await world.persist().catch(() => false));
    if (store.getState().keeping.kind === 'kept') keeping(kept());
  }

  /** Another tab took the right to write. What it cannot know of is kept as a document of its own. */
  function lost(doc: string): void {
    if (role.kind !== 'writing' || role.doc !== doc) return;
    if (!role.writer.isBehind()) {
      see(stepBack(doc, 0));
      return;
    }
    role.writer.stop();
    see(fork());
  }

  /** From writing a document to following it; the right to write is not asked for again before `patience` ms. */
  async function stepBack(doc: string, patience: number): Promise<void> {
    if (role.kind !== 'writing') return;
    const { writer } = role;
    await writer.flush();
    await watch(doc, writer.document().seq, patience);
  }

  /** Follows a document that another tab writes, to write it when that tab has gone. */
  async function watch(doc: string, seq: number, patience: number): Promise<void> {
    const callOff = new AbortController();
    const left = take({ kind: 'watching', doc, seq, callOff });
    keeping({ kind: 'watching', says: says.WATCHING, takeOver: () => see(takeOver(doc)) });
    const ask = setTimeout(() => {
      const claimed = tabs.claim(doc, 'when-free', () => lost(doc), callOff.signal);
      see(claimed.then((claim) => claim && becomeWriter(doc, claim)));
    }, patience);
    callOff.signal.addEventListener('abort', () => clearTimeout(ask));
    await left;
  }

  async function takeOver(doc: string): Promise<void> {
    if (role.kind !== 'watching' || role.doc !== doc) return;
    role.callOff.abort();
    await askToHandOver(tabs, doc);
    const claim = await tabs.claim(doc, 'now', () => lost(doc));
    if (claim) await becomeWriter(doc, claim);
  }

  async function becomeWriter(doc: string, claim: Claim): Promise<void> {
    await catchUp();
    const document = database && (await recordOf(database, doc));
    if (!database || !document || role.kind !== 'watching' || role.doc !== doc) {
      claim.release();
      return;
    }
    const journal = foundJournal({ ...document, seq: role.seq }, world.now());
    see(take(writing(database, journal, current(), claim)));
    keeping(kept());
  }

  /** Brings the followed document to where the store is. */
  async function catchUp(): Promise<void> {
    if (!database || role.kind !== 'watching') return;
    const watched = role;
    const { doc, seq } = watched;
    const log = await readLogAfter(database, doc, seq);
    if (role !== watched || watched.seq !== seq) return;
    const next = replayed(current(), seq, log);
    if (next.seq === (log.at(-1)?.seq ?? seq)) {
      watched.seq = next.seq;
      if (next.seq !== seq) store.follow(next.history);
      return;
    }
    const whole = recovered(await readStored(database, doc), 0);
    if (whole.kind === 'broken' || role !== watched) return;
    watched.seq = whole.seq;
    store.follow(whole.history);
  }

  /** Opens a kept document; false where it cannot be brought back. */
  /** Opens a kept document. False where it is not there, or cannot be brought back; rejects where it cannot be read. */
  async function bringBack(doc: string): Promise<boolean> {
    if (role.kind !== 'none' && role.doc === doc) return true;
    const open = database;
    const read = open && (await inTime(READING_MS, (late) => readKept(open, doc, tabs, () => lost(doc), late)));
    return read ? putBack(read) : false;
  }

  async function putBack({ document, stored, claim }: KeptDocument): Promise<boolean> {
    const { doc, name } = document;
    const found = recovered(stored, document.seq);
    if (found.kind === 'broken') {
      claim?.release();
      const left = `${fileNameOf(name).replace(/\.site\.json$/, '')} as kept.json`;
      const download = async (): Promise<void> => world.handOut(left, await work.leftOf(doc));
      store.getState().warn({
        says: says.brokenSays(name),
        acts: [{ name: 'Download what is left', act: () => see(download()) }],
      });
      return false;
    }
    const from = ownFileOf(document);
    if (!database || !(await store.resume(found.history, { ...from, inFile: document.savedSeq === found.seq }))) {
      claim?.release();
      return false;
    }
    ownFile = from;
    if (claim && found.kind === 'whole') {
      highest += 1;
      const journal = foundJournal({ ...document, seq: found.seq, order: highest }, world.now());
      see(take(writing(database, journal, found.history, claim)));
      keeping(kept());
    } else if (found.kind === 'whole') await watch(doc, found.seq, 0);
    else {
      // The entries that do not fit stay where they are; what could be brought back goes on beside them.
      claim?.release();
      await begin(found.history, from, 1);
      if (found.lost > 0) notify(says.lostSays(name, found.lost));
      if (found.doubtful) store.getState().warn({ says: says.doubtfulSays(name) });
    }
    changed(doc);
    return true;
  }

  async function reopen(doc: string): Promise<boolean> {
    try {
      return await bringBack(doc);
    } catch (error) {
      const name = (await work.list().catch(() => [])).find((site) => site.doc === doc)?.name ?? 'The site';
      notify(says.notReadSays(name, error));
      return false;
    }
  }

  /** Opens the store, once; a connection that comes too late is closed again. */
  async function connect(late: AbortSignal): Promise<SiteDatabase> {
    if (database) return database;
    const opened = await world.openDatabase((why) => {
      database = null;
      if (role.kind === 'writing') role.writer.stop();
      keeping({ kind: 'failed', says: says.closedSays(why) });
      if (why === 'lost') tryAgain(FIRST_AGAIN_MS);
    });
    if (late.aborted || stopped) {
      opened.close();
      throw new Error('its store does not answer');
    }
    database = opened;
    return opened;
  }

  /** Opens the store and reads what was open last, all of it in one span of time. */
  const readLast = (remembered: Remembered) =>
    inTime(READING_MS, async (late) => {
      const open = await connect(late);
      const { doc, loss, order } = await lastKept(open, remembered);
      highest = Math.max(highest, order);
      // A document that was opened in the meantime stands; nothing is put over it.
      const wanted = doc !== undefined && early === null && role.kind === 'none' ? doc : null;
      const read = wanted === null ? undefined : await readKept(open, wanted, tabs, () => lost(wanted), late);
      return { doc, loss, read };
    });

  async function start(): Promise<boolean> {
    keeping({ kind: 'loading' });
    const remembered = { tab: world.tabDocument.get(), mirror: world.mirror.get() };
    try {
      const { loss, read } = await readLast(remembered);
      const resumed = read !== undefined && early === null && (await putBack(read));
      if (read && !resumed && role.kind === 'none') read.claim?.release();
      if (loss) notify(loss);
      see(lookAtRoom());
      return resumed;
    } catch (error) {
      unread = remembered;
      if (!database) keeping({ kind: 'failed', says: says.failureSays(error) });
      else store.getState().warn({ says: says.unreadSays(error) });
      if (!isNewer(error)) tryAgain(FIRST_AGAIN_MS);
      return false;
    }
  }

  function tryAgain(ms: number): void {
    clearTimeout(again);
    if (!stopped) again = setTimeout(() => see(onceMore(ms)), ms);
  }

  /** Asks a store that failed once more. What is open goes on; what was kept is offered, or shown if nothing was done. */
  async function onceMore(ms: number): Promise<void> {
    try {
      if (unread) {
        const { doc } = await readLast(unread);
        store.setState({ alerts: store.getState().alerts.filter(({ says: text }) => !text.startsWith(says.UNREAD)) });
        unread = null;
        if (doc !== undefined) await offer(doc);
      } else await inTime(READING_MS, connect);
    } catch (error) {
      if (!isNewer(error)) tryAgain(Math.min(2 * ms, LAST_AGAIN_MS));
      return;
    }
    await goOn();
  }

  /** Opens the kept document where nothing was done on the page, else says that it can be opened. */
  async function offer(doc: string): Promise<void> {
    const { opened, saved } = store.getState();
    const { done, undone } = current();
    const untouched = opened <= 1 && done.length + undone.length === 0 && saved.fileName === undefined;
    if (untouched && (await reopen(doc))) return;
    const name = (await work.list()).find((site) => site.doc === doc)?.name;
    if (name === undefined) return;
    const acts = [{ name: 'Open it', act: () => see(reopen(doc)) }];
    store.getState().warn({ says: says.readAgainSays(name), acts });
  }

  /** Keeps the open document again after the store was away. */
  async function goOn(): Promise<void> {
    if (!database || role.kind === 'watching' || store.getState().opened === 0) return;
    if (role.kind === 'none') {
      await begin(current(), ownFile);
      return;
    }
    if (!role.writer.isStopped()) return;
    const { doc, claim } = role;
    const document = role.writer.document();
    const there = await recordOf(database, doc);
    if (!there || there.seq > document.seq) {
      await begin(current(), ownFile, 1);
      return;
    }
    const next = writing(database, unsureJournal(document, world.now()), current(), claim);
    role = next;
    if (next.kind === 'writing') await next.writer.flush();
  }

  const resumed = await start();
  loading = false;
  if (role.kind === 'none' && early) await begin(current(), early);
  if (role.kind === 'none' && store.getState().keeping.kind === 'loading') keeping({ kind: 'off' });
  world.onLeaving(() => {
    if (role.kind === 'writing') see(role.writer.flush('haste'));
  });
  world.askBeforeLeaving(() => {
    if (role.kind === 'writing') see(role.writer.flush('haste'));
    const { keeping: state, saved } = store.getState();
    const { done, undone } = current();
    const nowhere = state.kind === 'failed' || state.kind === 'off' || state.kind === 'loading';
    return nowhere && !saved.inFile && done.length + undone.length > 0;
  });

  return {
    ...work,
    resumed: resumed || early !== null,
    reopen,
    holdOn: async () => {
      await flush();
      if (database && role.kind !== 'none') await holdOn(database, role.doc);
    },
    health: async () => {
      const document = role.kind === 'writing' ? role.writer.document() : null;
      return {
        room: await world.room().catch(() => null),
        persisted: askedToPersist || (await world.persisted().catch(() => false)) ? !mayClear : null,
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
      stopped = true;
      clearTimeout(again);
      unlisten();
      await take({ kind: 'none' });
      tabs.close();
      database?.close();
    },
  };
}

const isNewer = (error: unknown): boolean => error instanceof DOMException && error.name === 'VersionError';
