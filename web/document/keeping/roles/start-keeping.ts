import * as says from '../keeping-words.ts';
import type { SiteDatabase } from '../store/database.ts';
import { unsureJournal } from '../store/journal.ts';
import { recordOf } from '../store/kept-sites.ts';
import { lastKept, type Remembered, readKept } from '../store/last-kept.ts';
import { putBack, READING_MS, reopen } from './bring-back.ts';
import { watch } from './following.ts';
import { inTime, NoAnswer } from './in-time.ts';
import { type Keeper, keepsNone } from './keeper.ts';

/** Between tries at a store that failed; each time longer, up to the second. */
const FIRST_AGAIN_MS = 4_000;
const LAST_AGAIN_MS = 60_000;

/**
 * Opens the store and brings back what was open last, all of it within one span of time. Where that fails, in whatever
 * way, it is said and tried again; the page goes on without it, and nothing that was kept is touched.
 */
export async function startKeeping(keeper: Keeper): Promise<boolean> {
  const { store, world } = keeper;
  store.setKeeping({ kind: 'loading' });
  const remembered = { tab: world.tabDocument.get(), mirror: world.mirror.get() };
  try {
    const { loss, read } = await readLast(keeper, remembered);
    // A document that was opened in the meantime stands; nothing is put over it.
    const resumed = read !== undefined && keeper.early === null && (await putBack(keeper, read));
    if (read && !resumed && keepsNone(keeper.role)) read.claim?.release();
    if (loss) store.getState().notify(loss);
    return resumed;
  } catch (error) {
    keeper.unread = remembered;
    if (!keeper.database) store.setKeeping({ kind: 'failed', says: says.failureSays(error) });
    else store.getState().warn({ says: says.unreadSays(error) });
    if (!isNewer(error)) tryAgain(keeper, FIRST_AGAIN_MS);
    return false;
  }
}

const readLast = (keeper: Keeper, remembered: Remembered) =>
  inTime(READING_MS, async (late) => {
    const open = await connect(keeper, late);
    const { doc, loss, order } = await lastKept(open, remembered);
    keeper.highest = Math.max(keeper.highest, order);
    const isWanted = doc !== undefined && keeper.early === null && keepsNone(keeper.role);
    const { tabs } = keeper.world;
    const read = isWanted ? await readKept(open, doc, tabs, () => keeper.lost(doc), late) : undefined;
    return { doc, loss, read };
  });

/** Opens the store, once; a connection that comes too late is closed again. */
async function connect(keeper: Keeper, late: AbortSignal): Promise<SiteDatabase> {
  if (keeper.database) return keeper.database;
  const opened = await keeper.world.openDatabase((why) => {
    keeper.database = null;
    if (keeper.role.kind === 'writing') keeper.role.writer.stop();
    keeper.store.setKeeping({ kind: 'failed', says: says.closedSays(why) });
    if (why === 'lost') tryAgain(keeper, FIRST_AGAIN_MS);
  });
  if (late.aborted || keeper.stopped) {
    opened.close();
    throw new NoAnswer();
  }
  keeper.database = opened;
  return opened;
}

function tryAgain(keeper: Keeper, ms: number): void {
  setTimeout(() => {
    if (!keeper.stopped) keeper.see(onceMore(keeper, ms));
  }, ms);
}

/** Asks a store that failed once more. What is open goes on; what was kept is offered, or shown if nothing was done. */
async function onceMore(keeper: Keeper, ms: number): Promise<void> {
  const { unread, store } = keeper;
  try {
    if (unread) {
      const { doc } = await readLast(keeper, unread);
      const alerts = store.getState().alerts.filter((alert) => !alert.says.startsWith(says.UNREAD));
      store.setState({ alerts });
      keeper.unread = null;
      if (doc !== undefined) await offer(keeper, doc);
    } else await inTime(READING_MS, (late) => connect(keeper, late));
  } catch (error) {
    if (!isNewer(error)) tryAgain(keeper, Math.min(2 * ms, LAST_AGAIN_MS));
    return;
  }
  await goOn(keeper);
}

/** Opens the kept document where nothing was done on the page, else says that it can be opened. */
async function offer(keeper: Keeper, doc: string): Promise<void> {
  const { store, work, see } = keeper;
  const { opened, saved, committed, warn } = store.getState();
  const { done, undone } = committed();
  const untouched = opened <= 1 && done.length + undone.length === 0 && saved.fileName === undefined;
  if (untouched && (await reopen(keeper, doc))) return;
  const name = (await work.list()).find((site) => site.doc === doc)?.name;
  if (name === undefined) return;
  warn({ says: says.readAgainSays(name), acts: [{ name: 'Open it', act: () => see(reopen(keeper, doc)) }] });
}

/** Keeps the open document again after the store was away. */
async function goOn(keeper: Keeper): Promise<void> {
  const { database, role, store, world, ownFile } = keeper;
  if (!database || store.getState().opened === 0) return;
  const current = store.getState().committed();
  if (keepsNone(role)) await keeper.begin(current, ownFile);
  else if (role.kind === 'watching') await watch(keeper, role.doc, role.seq, 0);
  else if (role.writer.isStopped()) {
    const document = role.writer.document();
    const there = await recordOf(database, role.doc);
    if (!there || there.seq > document.seq) {
      await keeper.begin(current, ownFile, 1);
      return;
    }
    const next = keeper.writing(database, unsureJournal(document, world.now()), current, role.claim);
    keeper.role = next;
    if (next.kind === 'writing') await next.writer.flush();
  }
}

const isNewer = (error: unknown): boolean => error instanceof DOMException && error.name === 'VersionError';
