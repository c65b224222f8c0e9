import type { SiteFile } from '../../../../routing/site/site.ts';
import { readStored } from '../store/database.ts';
import { documentRecords, presentOf, textsOf } from '../store/kept-sites.ts';
import type { CardRecord, DocumentRecord } from '../store/storage-records.ts';
import { binKept, eraseBinned, renameKept, unbinKept } from './kept-changes.ts';
import { bundleKept, copyKept, type Restored, restoreBundle } from './kept-copies.ts';
import type { Refusal, WorkWorld } from './work-world.ts';

/** A site that the browser keeps, for a list to open it from. */
export interface KeptSite extends Pick<DocumentRecord, 'doc' | 'name' | 'seq' | 'edits' | 'at' | 'binned'> {
  /** The person's own file, where there is one, and whether the site as it stands is in it. */
  readonly fileName?: string;
  readonly sent?: boolean;
  readonly inFile: boolean;
  /** It is the one that this tab has open. */
  readonly open: boolean;
}

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

/** The list of kept sites over the store of the browser, as it stands when asked. */
export function keptWork(world: WorkWorld): KeptWork {
  const { database } = world;
  const listed = async (binned: boolean): Promise<readonly KeptSite[]> => {
    const open = database();
    const records = open ? await documentRecords(open) : [];
    return records
      .filter((record) => (record.binned !== undefined) === binned)
      .map((record) => shown(record, world.openDoc()));
  };
  return {
    list: () => listed(false),
    bin: () => listed(true),
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
    copy: (doc, name) => copyKept(world, doc, name),
    rename: (doc, name) => renameKept(world, doc, name),
    putInBin: (doc) => binKept(world, doc),
    takeFromBin: (doc) => unbinKept(world, doc),
    erase: (doc) => eraseBinned(world, doc),
    bundle: () => bundleKept(world),
    restore: (text) => restoreBundle(world, text),
    card: async (doc) => database()?.get('cards', doc),
    keepCard: async (card) => {
      await database()?.put('cards', card);
    },
  };
}

/** A record as the list has it, while a document is open. */
function shown(record: DocumentRecord, openDoc: string | null): KeptSite {
  const { doc, name, seq, edits, at, binned, fileName, sent, savedSeq } = record;
  return {
    ...{ doc, name, seq, edits, at, inFile: savedSeq === seq, open: doc === openDoc },
    ...(binned !== undefined && { binned }),
    ...(fileName !== undefined && { fileName }),
    ...(sent && { sent }),
  };
}
