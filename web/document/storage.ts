import { inTime, readLogAfter, readStored, type SiteDatabase } from './database.ts';
import type { DocumentEvent, Keeping } from './document-state.ts';
import type { History } from './history.ts';
import { foundJournal, type Journal, newJournal } from './journal.ts';
import { brokenSays, closedSays, FORKED, failureSays, lostSays, MAY_CLEAR, WATCHING } from './keeping-words.ts';
import { clearOld, holdOn, recordOf, recordsOf, textsOf } from './kept-sites.ts';
import { lossOf } from './mirror.ts';
import type { PageWorld } from './page-world.ts';
import { recovered, replayed } from './recovery.ts';
import type { DocumentRecord } from './storage-records.ts';
import type { DocumentStore } from './store.ts';
import { askToHandOver, type Claim, HAND_OVER_MS } from './tabs.ts';
import { createWriter, type Writer, type Wrote } from './writer.ts';

/** A site that the browser keeps, for a list to open it from. */
export type KeptSite = Pick<DocumentRecord, 'doc' | 'name' | 'edits' | 'at' | 'fileName'>;

/** The keeping of sites in this browser. */
export interface SiteKeeping {
  /** A site stands on the page: it was brought back, or opened while that was under way. */
  readonly resumed: boolean;
  /** The sites kept, the newest first. */
  readonly list: () => Promise<readonly KeptSite[]>;
  /** Opens a kept site. False where it cannot be brought back. */
  readonly reopen: (doc: string) => Promise<boolean>;
  /** The texts kept of a site as they stand, the newest first: what is left of one that cannot be brought back. */
  readonly textsOf: (doc: string) => Promise<readonly string[]>;
  /** Keeps the open site even if it is never changed. */
  readonly holdOn: () => Promise<void>;
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

type Origin = Pick<DocumentRecord, 'fileName' | 'place'>;

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
  let early: Origin | null = null;
  let mayClear = false;
  let askedToPersist = false;

  /** Work that nobody waits for; where the store fails it, that is said. */
  function see(work: Promise<unknown>): void {
    work.catch((error: unknown) => {
      if (database) keeping({ kind: 'failed', says: failureSays(error) });
    });
  }

  const unlisten = store.listen(hear);
  tabs.hear((message) => {
    const { doc } = message;
    if (message.kind === 'wrote') {
      if (role.kind === 'watching' && role.doc === doc && message.seq > role.seq) see(catchUp());
    } else if (message.kind === 'hand-over' && role.kind === 'writing' && role.doc === doc) {
      see(stepBack(doc, 2 * HAND_OVER_MS).then(() => tabs.tell({ kind: 'handed-over', doc })));
    }
  });

  function hear(event: DocumentEvent): void {
    if (event.what === 'open') {
      const from = originOf(event);
      if (loading) early = from;
      else see(begin(event.history, from));
    } else if (role.kind === 'writing') {
      role.writer.note(event);
      if (store.getState().keeping.kind === 'kept') keeping({ kind: 'writing' });
    } else if (loading) early = {};
  }

  /** Takes another role; resolves when the one before has been left in order. */
  async function take(next: Role): Promise<void> {
    const before = role;
    role = next;
    if (next.kind !== 'none') {
      loading = false;
      world.tabDocument.set(next.doc);
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
  async function begin(history: History, from: Origin): Promise<void> {
    if (!database) return;
    const doc = world.newDocument();
    const { name } = history.file;
    const saved = store.getState().saved.inFile ? { savedSeq: 0 } : {};
    const document = { doc, name, edits: history.done.length, at: world.now(), ...from, ...saved };
    const next = writing(database, newJournal(document), history, null);
    const left = take(next);
    keeping({ kind: 'writing' });
    if (next.kind !== 'writing') return;
    await next.writer.flush();
    const claim = await tabs.claim(doc, 'if-free', () => lost(doc));
    if (role === next) next.claim = claim;
    else claim?.release();
    await left;
    if (database && role === next) await clearOld(database, tabs, doc);
  }

  async function fork(): Promise<void> {
    await begin(current(), {});
    notify(FORKED);
  }

  function told(doc: string, wrote: Wrote): void {
    if (role.kind !== 'writing' || role.doc !== doc) return;
    if (wrote.kind === 'conflict') see(fork());
    else if (wrote.kind === 'failed') keeping({ kind: 'failed', says: failureSays(wrote.error) });
    else {
      const { name, seq, edits, at } = wrote.document;
      world.mirror.set({ doc, name, edits, at });
      tabs.tell({ kind: 'wrote', doc, seq });
      keeping(role.writer.isBehind() ? { kind: 'writing' } : kept());
      if (edits > 0) see(askToPersist());
    }
  }

  const kept = (): Keeping => ({ kind: 'kept', ...(mayClear && { says: MAY_CLEAR }) });

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
    await watch(doc, writer.seq(), patience);
  }

  /** Follows a document that another tab writes, to write it when that tab has gone. */
  async function watch(doc: string, seq: number, patience: number): Promise<void> {
    const callOff = new AbortController();
    const left = take({ kind: 'watching', doc, seq, callOff });
    keeping({ kind: 'watching', says: WATCHING, takeOver: () => see(takeOver(doc)) });
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
  async function bringBack(doc: string): Promise<boolean> {
    if (role.kind !== 'none' && role.doc === doc) return true;
    const document = database && (await recordOf(database, doc));
    if (!database || !document) return false;
    const claim = await tabs.claim(doc, 'if-free', () => lost(doc));
    const found = recovered(await readStored(database, doc), document.seq);
    if (found.kind === 'broken') {
      claim?.release();
      notify(brokenSays(document.name));
      return false;
    }
    const from = originOf(document);
    if (!database || !(await store.resume(found.history, { ...from, inFile: document.savedSeq === found.seq }))) {
      claim?.release();
      return false;
    }
    if (claim && found.kind === 'whole') {
      see(take(writing(database, foundJournal({ ...document, seq: found.seq }, world.now()), found.history, claim)));
      keeping(kept());
    } else if (found.kind === 'whole') await watch(doc, found.seq, 0);
    else {
      // The entries that do not fit stay where they are; what could be brought back goes on beside them.
      claim?.release();
      await begin(found.history, from);
      notify(lostSays(document.name, found.lost));
    }
    return true;
  }

  async function start(): Promise<boolean> {
    keeping({ kind: 'loading' });
    try {
      const opening = world.openDatabase((why) => {
        database = null;
        if (role.kind === 'writing') role.writer.stop();
        keeping({ kind: 'failed', says: closedSays(why) });
      });
      database = await inTime(opening);
    } catch (error) {
      keeping({ kind: 'failed', says: failureSays(error) });
      return false;
    }
    const mirror = world.mirror.get();
    const all = await recordsOf(database);
    const wanted = [world.tabDocument.get(), mirror?.doc, all[0]?.doc];
    const doc = wanted.find((id) => id != null && all.some((other) => other.doc === id));
    // A document that was opened in the meantime stands; nothing is put over it.
    const resumed = early === null && doc != null && (await bringBack(doc));
    const loss = mirror && !all.some((other) => other.doc === mirror.doc) ? lossOf(mirror) : null;
    if (loss) notify(loss);
    return resumed;
  }

  const resumed = await start();
  loading = false;
  if (role.kind === 'none' && early) await begin(current(), early);
  if (role.kind === 'none' && store.getState().keeping.kind === 'loading') keeping({ kind: 'off' });
  const flush = async (): Promise<void> => {
    if (role.kind === 'writing') await role.writer.flush();
  };
  world.onLeaving(() => {
    if (role.kind === 'writing') see(role.writer.flush('haste'));
  });

  return {
    resumed: resumed || early !== null,
    list: async () => (database ? recordsOf(database) : []),
    reopen: bringBack,
    holdOn: async () => {
      await flush();
      if (database && role.kind !== 'none') await holdOn(database, role.doc);
    },
    textsOf: async (doc) => (database ? textsOf(database, doc) : []),
    flush,
    stop: async () => {
      unlisten();
      await take({ kind: 'none' });
      tabs.close();
      database?.close();
    },
  };
}

const originOf = ({
  fileName,
  place,
}: {
  readonly fileName?: string;
  readonly place?: DocumentRecord['place'];
}): Origin => ({
  ...(fileName !== undefined && { fileName }),
  ...(place && { place }),
});
