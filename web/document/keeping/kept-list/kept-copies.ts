import { writeSite } from '../../../../routing/site/file/write.ts';
import { newHistory } from '../../change/history.ts';
import { type BundledSite, readSiteBundle, writeSiteBundle } from '../../files/site-bundle.ts';
import { write } from '../store/database.ts';
import { handed, newJournal } from '../store/journal.ts';
import { documentRecords, highestOrder, presentOf } from '../store/kept-sites.ts';
import { GONE, NO_STORE, type Refusal, tellListed, type WorkWorld } from './work-world.ts';

/** How the reading back of a file of kept sites went. */
export type Restored =
  | {
      readonly ok: true;
      readonly restored: number;
      /** Sites that are kept already, as they stand in the file. */
      readonly same: number;
      readonly faults: readonly string[];
    }
  | { readonly ok: false; readonly says: string };

/** Keeps a site as it is now under another name beside it. */
export async function copyKept(world: WorkWorld, doc: string, name: string): Promise<Refusal> {
  const { database, newDocument, now } = world;
  const open = database();
  if (!open) return NO_STORE;
  const present = await presentOf(open, doc);
  if (!present) return GONE;
  if (present.found.kind === 'broken') return 'It cannot be brought back, and not be copied.';
  const { order } = present.record;
  const history = newHistory({ ...present.found.history.file, name });
  // It stands beside the site that it is a version of, and counts as changed: it was kept on purpose.
  const document = { doc: newDocument(), name, edits: 1, at: now(), ...(order !== undefined && { order }) };
  await write(open, handed(newJournal(document), history, now(), false).writing);
  tellListed(world, document.doc);
  return null;
}

/** All kept sites but those in the bin, the newest first. */
async function bundled({ database }: Pick<WorkWorld, 'database'>): Promise<readonly BundledSite[]> {
  const open = database();
  const sites: BundledSite[] = [];
  for (const { doc, binned, edits, at } of open ? await documentRecords(open) : []) {
    if (!open || binned !== undefined) continue;
    const found = (await presentOf(open, doc))?.found;
    if (found && found.kind !== 'broken') sites.push({ history: found.history, at, edits });
  }
  return sites;
}

/** All kept sites in the text of one file, those in the bin left out. */
export const bundleKept = async (world: WorkWorld): Promise<string> =>
  writeSiteBundle(await bundled(world), new Date(world.now()).toISOString());

/** Keeps the sites of a bundle's text beside those that are kept. */
export async function restoreBundle(world: WorkWorld, text: string): Promise<Restored> {
  const { database, newDocument, now, changed } = world;
  const open = database();
  const read = readSiteBundle(text);
  if (!read.ok) return read;
  if (!open) return { ok: false, says: NO_STORE };
  const kept = new Set((await bundled(world)).map(({ history }) => writeSite(history.file)));
  const order = highestOrder(await documentRecords(open)) + 1;
  let restored = 0;
  // The first of the file was the newest.
  for (const { history, at, edits } of [...read.sites].reverse()) {
    const its = writeSite(history.file);
    if (kept.has(its)) continue;
    kept.add(its);
    const document = { doc: newDocument(), name: history.file.name, edits: Math.max(1, edits), at };
    const journal = newJournal({ ...document, order: order + restored });
    await write(open, handed(journal, history, now(), false).writing);
    restored += 1;
  }
  changed(null);
  return { ok: true, restored, same: read.sites.length - restored, faults: read.faults };
}
