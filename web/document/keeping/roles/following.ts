import { WATCHING } from '../keeping-words.ts';
import { readLogAfter, readStored } from '../store/database.ts';
import { foundJournal } from '../store/journal.ts';
import { recordOf } from '../store/kept-sites.ts';
import { recovered, replayed } from '../store/recovery.ts';
import { askToHandOver, type Claim } from '../tabs.ts';
import type { Keeper } from './keeper.ts';

/** From writing a document to following it; the right to write is not asked for again before `patience` ms. */
export async function stepBack(keeper: Keeper, doc: string, patience: number): Promise<void> {
  if (keeper.role.kind !== 'writing') return;
  const { writer } = keeper.role;
  await writer.flush();
  await watch(keeper, doc, writer.document().seq, patience);
}

/** Follows a document that another tab writes, to write it when that tab has gone. */
export async function watch(keeper: Keeper, doc: string, seq: number, patience: number): Promise<void> {
  const { store, world, see, lost } = keeper;
  const callOff = new AbortController();
  const left = keeper.take({ kind: 'watching', doc, seq, callOff });
  store.setKeeping({ kind: 'watching', says: WATCHING, takeOver: () => see(takeOver(keeper, doc)) });
  const ask = setTimeout(() => {
    const claimed = world.tabs.claim(doc, 'when-free', () => lost(doc), callOff.signal);
    see(claimed.then((claim) => claim && becomeWriter(keeper, doc, claim)));
  }, patience);
  callOff.signal.addEventListener('abort', () => clearTimeout(ask));
  await left;
}

async function takeOver(keeper: Keeper, doc: string): Promise<void> {
  const { role, lost } = keeper;
  const { tabs } = keeper.world;
  if (role.kind !== 'watching' || role.doc !== doc) return;
  role.callOff.abort();
  await askToHandOver(tabs, doc);
  const claim = await tabs.claim(doc, 'now', () => lost(doc));
  if (claim) await becomeWriter(keeper, doc, claim);
}

async function becomeWriter(keeper: Keeper, doc: string, claim: Claim): Promise<void> {
  await catchUp(keeper);
  const document = keeper.database && (await recordOf(keeper.database, doc));
  const { database, role, store, world } = keeper;
  if (!database || !document || role.kind !== 'watching' || role.doc !== doc) {
    claim.release();
    return;
  }
  const journal = foundJournal({ ...document, seq: role.seq }, world.now());
  keeper.see(keeper.take(keeper.writing(database, journal, store.getState().committed(), claim)));
  keeper.sayKept();
}

/** Brings the followed document to where the store is. */
export async function catchUp(keeper: Keeper): Promise<void> {
  const { database, role: watched, store } = keeper;
  if (!database || watched.kind !== 'watching') return;
  const { doc, seq } = watched;
  const log = await readLogAfter(database, doc, seq);
  if (keeper.role !== watched || watched.seq !== seq) return;
  const next = replayed(store.getState().committed(), seq, log);
  if (next.seq === (log.at(-1)?.seq ?? seq)) {
    watched.seq = next.seq;
    if (next.seq !== seq) store.follow(next.history);
    return;
  }
  const whole = recovered(await readStored(database, doc), 0);
  if (whole.kind === 'broken' || keeper.role !== watched) return;
  watched.seq = whole.seq;
  store.follow(whole.history);
}
