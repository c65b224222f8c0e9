import type { FileWithHandle } from 'browser-fs-access';
import { safeFileName } from '../../../calc/sheets/file-name.ts';
import { checkSum } from './check-sum.ts';

/** A file of the person's own that can be written again without asking for its name; null where the browser cannot. */
export type FilePlace = FileSystemFileHandle | null;

/** What a file was when it was last read or written here, by which a change from outside is told. */
export interface Stamp {
  readonly size: number;
  readonly lastModified: number;
  /** Check sum of its text. */
  readonly sum: number;
}

/** A text file that a person chose. */
export type Picked =
  | {
      readonly kind: 'picked';
      readonly text: string;
      readonly fileName: string;
      readonly place: FilePlace;
      readonly stamp?: Stamp;
    }
  | { readonly kind: 'none' }
  | { readonly kind: 'failed'; readonly says: string };

/** `sent`: handed to the browser as a download; whether it arrives is not known. `changed`: not written, see `FileDoor`. */
export type SavedFile =
  | { readonly kind: 'saved'; readonly fileName: string; readonly place: FilePlace; readonly stamp?: Stamp }
  | { readonly kind: 'sent'; readonly fileName: string }
  | { readonly kind: 'changed'; readonly fileName: string }
  | { readonly kind: 'none' }
  | { readonly kind: 'failed'; readonly says: string };

/** The way to the person's own files. Nothing is read or written that was not picked. */
export interface FileDoor {
  readonly pick: () => Promise<Picked>;
  /**
   * Saves to a place it came from or was saved to; where that is null, to one that the person names. Where the file there
   * is no longer what `since` says, another program has written it: nothing is written then.
   */
  readonly save: (text: string, fileName: string, place: FilePlace, since?: Stamp) => Promise<SavedFile>;
}

/** The largest site file that is read, in bytes: far past any site of 100,000 stalls. */
export const MAX_FILE_BYTES = 200_000_000;

const KIND = { mimeTypes: ['application/json'], extensions: ['.json'], description: 'Site file' } as const;

/** `NAME.site.json` for a site's name, without the signs that some file systems refuse. */
export const fileNameOf = (name: string): string => `${safeFileName(name)}.site.json`;

/** What shows the browser's file dialogs; no part of the first screen. */
export const fileDialogs = (): Promise<typeof import('browser-fs-access')> => import('browser-fs-access');

/** The door of a browser: its file dialogs, and downloads where it has none. */
export function fileDoor(): FileDoor {
  return {
    pick: async () => {
      try {
        const { fileOpen } = await fileDialogs();
        const file: FileWithHandle = await fileOpen({
          ...KIND,
          mimeTypes: [...KIND.mimeTypes],
          extensions: [...KIND.extensions],
        });
        const text = await textOf(file);
        const place = file.handle ?? null;
        return { kind: 'picked', text, fileName: file.name, place, ...(place && { stamp: stampOf(file, text) }) };
      } catch (error) {
        return notPicked(error);
      }
    },
    save: async (text, fileName, place, since) => {
      try {
        if (place && since && (await wasChanged(place, since))) return { kind: 'changed', fileName };
        const blob = new Blob([text], { type: 'application/json' });
        const options = { fileName, extensions: [...KIND.extensions], description: KIND.description };
        const { fileSave } = await fileDialogs();
        const saved = await fileSave(blob, options, place);
        if (!saved) return { kind: 'sent', fileName };
        const written = await saved.getFile().catch(() => null);
        return { kind: 'saved', fileName: saved.name, place: saved, ...(written && { stamp: stampOf(written, text) }) };
      } catch (error) {
        return notPicked(error);
      }
    },
  };
}

const stampOf = ({ size, lastModified }: File, text: string): Stamp => ({ size, lastModified, sum: checkSum(text) });

interface Askable {
  readonly requestPermission?: (mode: { readonly mode: 'readwrite' }) => Promise<unknown>;
}

/** Whether a file holds something else than it did; a file that is gone can be written again and nothing is lost. */
async function wasChanged(place: NonNullable<FilePlace>, since: Stamp): Promise<boolean> {
  try {
    // After a reload the browser asks the person anew, and reads nothing before.
    await (place as Askable).requestPermission?.({ mode: 'readwrite' });
    const file = await place.getFile();
    if (file.size === since.size && file.lastModified === since.lastModified) return false;
    return file.size !== since.size || checkSum(await textOf(file)) !== since.sum;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'NotFoundError') return false;
    throw error;
  }
}

/** The text of a file, such as one dropped on the page. Throws RangeError where it is larger than any site. */
export async function textOf(file: Blob): Promise<string> {
  if (file.size > MAX_FILE_BYTES) throw new RangeError(`it is larger than ${MAX_FILE_BYTES / 1e6} MB`);
  return file.text();
}

/** Hands a file of the page's own making to the person as a download. */
export function download(fileName: string, type: string, content: string | Uint8Array<ArrayBuffer>): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // Some browsers begin to read only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

function notPicked(error: unknown): { readonly kind: 'none' } | { readonly kind: 'failed'; readonly says: string } {
  if (error instanceof DOMException && error.name === 'AbortError') return { kind: 'none' };
  return { kind: 'failed', says: error instanceof Error ? error.message : String(error) };
}
