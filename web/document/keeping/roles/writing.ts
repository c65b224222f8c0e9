import { frameDrawn } from '../../../parts/after-frame.ts';
import type { History } from '../../change/history.ts';
import type { OwnFile } from '../../files/own-file.ts';
import * as says from '../keeping-words.ts';
import type { SiteDatabase } from '../store/database.ts';
import { type Journal, newJournal } from '../store/journal.ts';
import { clearUnchanged } from '../store/kept-sites.ts';
import type { Claim } from '../tabs.ts';
import { stepBack } from './following.ts';
import type { Keeper, Role } from './keeper.ts';
import { createWriter, type WriteOutcome } from './writer.ts';

/** The role of the tab that keeps a document: every change of it goes into its journal. */
export function writing(
  keeper: Keeper,
  open: SiteDatabase,
  journal: Journal,
  history: History,
  claim: Claim | null,
): Role {
  const { doc } = journal.document;
  const writer = createWriter(open, journal, history, keeper.world.now, (wrote) => told(keeper, doc, wrote));
  return { kind: 'writing', doc, writer, claim };
}

/** Keeps a document under a name of its own, with `least` edits to its count. */
export async function begin(keeper: Keeper, history: History, from: OwnFile, least = 0): Promise<void> {
  const { database, store, world } = keeper;
  if (!database) return;
  const doc = world.newDocument();
  const { name } = history.file;
  const saved = store.getState().saved.inFile ? { savedSeq: 0 } : {};
  const edits = Math.max(least, history.done.length);
  keeper.highest += 1;
  const document = { doc, name, edits, at: world.now(), order: keeper.highest, ...from, ...saved };
  const next = keeper.writing(database, newJournal(document), history, null);
  const left = keeper.take(next);
  store.setKeeping({ kind: 'writing' });
  if (next.kind !== 'writing') return;
  // The whole copy of a large site takes a while to write out; what was opened is seen first.
  await frameDrawn();
  await next.writer.flush();
  const claim = await world.tabs.claim(doc, 'if-free', () => keeper.lost(doc));
  if (keeper.role === next) next.claim = claim;
  else claim?.release();
  await left;
  if (keeper.database && keeper.role === next) {
    // Tidying up may fail where reading does; the open site is kept all the same.
    clearUnchanged(keeper.database, world.tabs, doc).then(
      () => keeper.changed(null),
      () => {},
    );
  }
}

/** What the store answered to the writer of a document. */
function told(keeper: Keeper, doc: string, wrote: WriteOutcome): void {
  const { role, unread, store, world, lasting, see } = keeper;
  if (role.kind !== 'writing' || role.doc !== doc) return;
  if (wrote.kind === 'conflict') see(fork(keeper));
  else if (wrote.kind === 'failed') store.setKeeping({ kind: 'failed', says: says.failureSays(wrote.error) });
  else {
    const { name, seq, edits, at, order } = wrote.document;
    if (!unread || edits > 0) {
      world.mirror.set({ doc, name, edits, at });
      world.tabDocument.set(doc);
    }
    world.tabs.tell({ kind: 'wrote', doc, seq, ...(order !== undefined && { order }) });
    if (role.writer.isBehind()) store.setKeeping({ kind: 'writing' });
    else keeper.sayKept();
    keeper.changed(doc);
    if (edits > 0) see(lasting.ask());
    if (wrote.snapshot) see(lasting.lookAtRoom());
  }
}

/** What this tab has and another changed at the same time goes on as a document of its own. */
async function fork(keeper: Keeper): Promise<void> {
  await keeper.begin(keeper.store.getState().committed(), {}, 1);
  keeper.store.getState().notify(says.FORKED);
}

/** Another tab took the right to write. What this one has not written yet is kept as a document of its own. */
export function lost(keeper: Keeper, doc: string): void {
  const { role, see } = keeper;
  if (role.kind !== 'writing' || role.doc !== doc) return;
  if (!role.writer.isBehind()) {
    see(stepBack(keeper, doc, 0));
    return;
  }
  role.writer.stop();
  see(fork(keeper));
}
