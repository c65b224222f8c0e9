import { writeSite } from '../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { afterTurn, newHistory } from '../change/history.ts';
import { nameSite } from '../edits/set.ts';
import { type BundledSite, readSiteBundle, writeSiteBundle } from '../files/site-bundle.ts';
import { forget, readStored, type SiteDatabase, write } from './database.ts';
import { handed, newJournal } from './journal.ts';
import { documentRecords, highestOrder, presentOf, recordOf, textsOf } from './kept-sites.ts';
import type { CardRecord, DocumentRecord } from './storage-records.ts';
import type { Tabs } from './tabs.ts';

/** A site that the browser keeps, for a list to open it from. */
export interface KeptSite extends Pick<DocumentRecord, 'doc' | 'name' | 'seq' | 'edits' | 'at' | 'binned'> {
  /** The person's own file, where there is one, and whether the site as it stands is in it. */
  readonly fileName?: string;
  readonly sent?: boolean;
  readonly inFile: boolean;
  /** It is the one that this tab has open. */
  readonly open: boolean;
}

/** Null where it was done, else why it was not. */
export type Refusal = string | null;

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

/** The list of kept sites and what can be done with those in it. */
export interface KeptWork {
  /** The sites kept, the newest first, without those in the bin; then those in the bin. */
  readonly list: () => Promise<readonly KeptSite[]>;
  readonly bin: () => Promise<readonly KeptSite[]>;
  /** A kept site as it is now; undefined where it cannot be read. */
  readonly siteOf: (doc: string) => Promise<SiteFile | undefined>;
  /** The texts kept of a site as they stand, the newest first: what is left of one that cannot be brought back. */
  readonly textsOf: (doc: string) => Promise<readonly string[]>;
  /** Everything kept of a site, as it stands, in one text. */
  readonly leftOf: (doc: string) => Promise<string>;
  /** Keeps a site as it is now under another name beside it, as a version to go back to. Its past is not taken along. */
  readonly copy: (doc: string, name: string) => Promise<Refusal>;
  readonly rename: (doc: string, name: string) => Promise<Refusal>;
  readonly putInBin: (doc: string) => Promise<Refusal>;
  readonly takeFromBin: (doc: string) => Promise<Refusal>;
  /** Deletes a site that is in the bin, for good. */
  readonly erase: (doc: string) => Promise<Refusal>;
  /** All kept sites in the text of one file, those in the bin left out. */
  readonly bundle: () => Promise<string>;
  /** Keeps the sites of such a file beside those that are kept; nothing is overwritten. */
  readonly restore: (text: string) => Promise<Restored>;
  readonly card: (doc: string) => Promise<CardRecord | undefined>;
  readonly keepCard: (card: CardRecord) => Promise<void>;
}

/** What the list needs of the keeping of sites. */
export interface WorkWorld {
  readonly database: () => SiteDatabase | null;
  readonly openDoc: () => string | null;
  readonly tabs: Tabs;
  readonly now: () => number;
  readonly newDocument: () => string;
  /** A site is not what it was in the list; null: several are not. */
  readonly changed: (doc: string | null) => void;
}

const NO_STORE = 'This browser keeps nothing just now.';
const GONE = 'It is no longer there.';
const OPEN_HERE = 'It is open here: open another site first.';
const OPEN_ELSEWHERE = 'It is open in another tab.';

export function keptWork({ database, openDoc, tabs, now, newDocument, changed }: WorkWorld): KeptWork {
  const records = async (): Promise<readonly DocumentRecord[]> => {
    const open = database();
    return open ? documentRecords(open) : [];
  };
  const shown = (record: DocumentRecord): KeptSite => {
    const { doc, name, seq, edits, at, binned, fileName, sent, savedSeq } = record;
    return {
      ...{ doc, name, seq, edits, at, inFile: savedSeq === seq, open: doc === openDoc() },
      ...(binned !== undefined && { binned }),
      ...(fileName !== undefined && { fileName }),
      ...(sent && { sent }),
    };
  };

  /** Changes a document that no tab has open. */
  async function withClaim(
    doc: string,
    work: (open: SiteDatabase, record: DocumentRecord) => Promise<Refusal>,
  ): Promise<Refusal> {
    const open = database();
    if (!open) return NO_STORE;
    if (doc === openDoc()) return OPEN_HERE;
    const claim = await tabs.claim(doc, 'if-free', () => {});
    if (!claim) return OPEN_ELSEWHERE;
    try {
      const record = await recordOf(open, doc);
      return record ? await work(open, record) : GONE;
    } finally {
      claim.release();
      changed(doc);
      tabs.tell({ kind: 'listed', doc });
    }
  }

  async function rename(doc: string, name: string): Promise<Refusal> {
    return withClaim(doc, async (open) => {
      const present = await presentOf(open, doc);
      if (present?.found.kind !== 'whole') return 'It cannot be brought back whole, and keeps its name.';
      const { record, found } = present;
      const edit = nameSite(found.history.file, name);
      if (edit.steps.length === 0) return null;
      afterTurn(found.history, 'do', edit);
      const seq = found.seq + 1;
      const document = { ...record, name, seq, edits: record.edits + 1, at: now() };
      await write(open, { document, log: [{ doc, seq, what: 'do', edit }] });
      return null;
    });
  }

  async function copy(doc: string, name: string): Promise<Refusal> {
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
    changed(document.doc);
    tabs.tell({ kind: 'listed', doc: document.doc });
    return null;
  }

  async function bundled(): Promise<readonly BundledSite[]> {
    const open = database();
    const sites: BundledSite[] = [];
    for (const { doc, binned, edits, at } of open ? await documentRecords(open) : []) {
      if (!open || binned !== undefined) continue;
      const found = (await presentOf(open, doc))?.found;
      if (found && found.kind !== 'broken') sites.push({ history: found.history, at, edits });
    }
    return sites;
  }

  async function restore(text: string): Promise<Restored> {
    const open = database();
    const read = readSiteBundle(text);
    if (!read.ok) return read;
    if (!open) return { ok: false, says: NO_STORE };
    const kept = new Set((await bundled()).map(({ history }) => writeSite(history.file)));
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

  return {
    list: async () => (await records()).filter(({ binned }) => binned === undefined).map(shown),
    bin: async () => (await records()).filter(({ binned }) => binned !== undefined).map(shown),
    siteOf: async (doc) => {
      const open = database();
      const found = open && (await presentOf(open, doc))?.found;
      return found && found.kind !== 'broken' ? found.history.file : undefined;
    },
    textsOf: async (doc) => {
      const open = database();
      return open ? textsOf(open, doc) : [];
    },
    leftOf: async (doc) => {
      const open = database();
      return open ? `${JSON.stringify(await readStored(open, doc), null, 1)}\n` : '';
    },
    copy,
    rename,
    putInBin: (doc) =>
      withClaim(doc, async (open, record) => {
        await open.put('documents', { ...record, edits: Math.max(1, record.edits), binned: now() });
        return null;
      }),
    takeFromBin: (doc) =>
      withClaim(doc, async (open, { binned: _, ...record }) => {
        await open.put('documents', record);
        return null;
      }),
    erase: (doc) =>
      withClaim(doc, async (open, { binned }) => {
        if (binned === undefined) return 'It is not in the bin.';
        await forget(open, [doc]);
        return null;
      }),
    bundle: async () => writeSiteBundle(await bundled(), new Date(now()).toISOString()),
    restore,
    card: async (doc) => database()?.get('cards', doc),
    keepCard: async (card) => {
      await database()?.put('cards', card);
    },
  };
}
