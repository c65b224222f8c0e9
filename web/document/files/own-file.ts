import type { Edit } from '../change/edit.ts';
import type { FilePlace, SavedFile, Stamp } from './files.ts';

/** The person's own file that a document came from or was saved to. */
export interface OwnFile {
  readonly fileName?: string;
  /** Where it can be written again without asking. */
  readonly place?: FilePlace;
  /** What it was when it was last read or written here. */
  readonly stamp?: Stamp;
  /** It went to the downloads; whether it arrived there is not known. */
  readonly sent?: boolean;
}

/** A document's own file, and the newest edit that it has; null where it has none of the document. */
export interface OwnState extends OwnFile {
  readonly savedAt: { readonly edit: Edit | undefined } | null;
}

/** The own file among other fields, without those that are not known. */
export const ownFileOf = ({ fileName, place, stamp, sent }: OwnFile): OwnFile => ({
  ...(fileName !== undefined && { fileName }),
  ...(place && { place }),
  ...(stamp && { stamp }),
  ...(sent && { sent }),
});

type Written = Extract<SavedFile, { kind: 'saved' | 'sent' }>;

/** The own file after a saving. */
export const fileAfter = (saved: Written): OwnFile & { readonly fileName: string; readonly place: FilePlace } =>
  saved.kind === 'sent'
    ? { fileName: saved.fileName, place: null, sent: true }
    : { fileName: saved.fileName, place: saved.place, ...(saved.stamp && { stamp: saved.stamp }) };

/** What is said of a saving. A download may be refused or go astray, which no page is told. */
export const savedSays = (saved: Written): string =>
  saved.kind === 'sent' ? `Sent to your downloads as ${saved.fileName}` : `Saved as ${saved.fileName}`;

export const changedSays = (fileName: string): string =>
  `“${fileName}” was changed by another program since it was opened or saved here. It was not written.`;
