import { afterTurn } from '../../change/history.ts';
import { nameSite } from '../../edits/set.ts';
import { forget, type SiteDatabase, write } from '../store/database.ts';
import { presentOf, recordOf } from '../store/kept-sites.ts';
import type { DocumentRecord } from '../store/storage-records.ts';
import { GONE, NO_STORE, type Refusal, tellListed, type WorkWorld } from './work-world.ts';

const OPEN_HERE = 'It is open here: open another site first.';
const OPEN_ELSEWHERE = 'It is open in another tab.';

/** Changes a document that no tab has open. */
async function withClaim(
  world: WorkWorld,
  doc: string,
  work: (open: SiteDatabase, record: DocumentRecord) => Promise<Refusal>,
): Promise<Refusal> {
  const open = world.database();
  if (!open) return NO_STORE;
  if (doc === world.openDoc()) return OPEN_HERE;
  const claim = await world.tabs.claim(doc, 'if-free', () => {});
  if (!claim) return OPEN_ELSEWHERE;
  try {
    const record = await recordOf(open, doc);
    return record ? await work(open, record) : GONE;
  } finally {
    claim.release();
    tellListed(world, doc);
  }
}

/** Gives a kept site another name, by an edit that can be undone when it is open. */
export const renameKept = (world: WorkWorld, doc: string, name: string): Promise<Refusal> =>
  withClaim(world, doc, async (open) => {
    const present = await presentOf(open, doc);
    if (present?.found.kind !== 'whole') return 'It cannot be brought back whole, and keeps its name.';
    const { record, found } = present;
    const edit = nameSite(found.history.file, name);
    if (edit.steps.length === 0) return null;
    afterTurn(found.history, 'do', edit);
    const seq = found.seq + 1;
    const document = { ...record, name, seq, edits: record.edits + 1, at: world.now() };
    await write(open, { document, log: [{ doc, seq, what: 'do', edit }] });
    return null;
  });

export const binKept = (world: WorkWorld, doc: string): Promise<Refusal> =>
  withClaim(world, doc, async (open, record) => {
    await open.put('documents', { ...record, edits: Math.max(1, record.edits), binned: world.now() });
    return null;
  });

export const unbinKept = (world: WorkWorld, doc: string): Promise<Refusal> =>
  withClaim(world, doc, async (open, { binned: _, ...record }) => {
    await open.put('documents', record);
    return null;
  });

/** Deletes a site that is in the bin, for good. */
export const eraseBinned = (world: WorkWorld, doc: string): Promise<Refusal> =>
  withClaim(world, doc, async (open, { binned }) => {
    if (binned === undefined) return 'It is not in the bin.';
    await forget(open, [doc]);
    return null;
  });
