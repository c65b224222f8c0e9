import { fileNameOf } from '../../files/files.ts';
import { ownFileOf } from '../../files/own-file.ts';
import * as says from '../keeping-words.ts';
import { foundJournal } from '../store/journal.ts';
import { type KeptDocument, readKept } from '../store/last-kept.ts';
import { recovered } from '../store/recovery.ts';
import { watch } from './following.ts';
import { inTime } from './in-time.ts';
import { type Keeper, keepsNone } from './keeper.ts';

/** So long the reading of what was kept may take, in milliseconds. */
export const READING_MS = 5_000;

/** Opens a kept document. False where it cannot be brought back, or not be read just now, which is said. */
export async function reopen(keeper: Keeper, doc: string): Promise<boolean> {
  const { database, role, world, lost, work, store } = keeper;
  if (!keepsNone(role) && role.doc === doc) return true;
  if (!database) return false;
  try {
    const read = await inTime(READING_MS, (late) => readKept(database, doc, world.tabs, () => lost(doc), late));
    return read ? await putBack(keeper, read) : false;
  } catch (error) {
    const name = (await work.list().catch(() => [])).find((site) => site.doc === doc)?.name ?? 'The site';
    store.getState().notify(says.notReadSays(name, error));
    return false;
  }
}

/** Puts a document that was read on the page, and goes on keeping it: as its writer, beside it, or following it. */
export async function putBack(keeper: Keeper, { document, stored, claim }: KeptDocument): Promise<boolean> {
  const { store, world, see } = keeper;
  const { warn, notify } = store.getState();
  const { doc, name } = document;
  const found = recovered(stored, document.seq);
  if (found.kind === 'broken') {
    claim?.release();
    const act = (): void => see(handOutLeft(keeper, doc, name));
    warn({ says: says.brokenSays(name), acts: [{ name: 'Download what is left', act }] });
    return false;
  }
  const from = ownFileOf(document);
  const opened = await store.resume(found.history, { ...from, inFile: document.savedSeq === found.seq });
  if (!keeper.database || !opened) {
    claim?.release();
    return false;
  }
  keeper.ownFile = from;
  if (claim && found.kind === 'whole') {
    keeper.highest += 1;
    const journal = foundJournal({ ...document, seq: found.seq, order: keeper.highest }, world.now());
    const left = keeper.take(keeper.writing(keeper.database, journal, found.history, claim));
    keeper.sayKept();
    await left;
  } else if (found.kind === 'whole') await watch(keeper, doc, found.seq, 0);
  else {
    // The entries that do not fit stay where they are; what could be brought back goes on beside them.
    claim?.release();
    await keeper.begin(found.history, from, 1);
    if (found.lost > 0) notify(says.lostSays(name, found.lost));
    if (found.doubtful) warn({ says: says.doubtfulSays(name) });
  }
  keeper.changed(doc);
  return true;
}

async function handOutLeft({ world, work }: Keeper, doc: string, name: string): Promise<void> {
  world.handOut(`${fileNameOf(name).replace(/\.site\.json$/, '')} as kept.json`, await work.leftOf(doc));
}
