import { readSite } from '../../routing/site/file/read.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { letDraftsGo } from '../parts/open-drafts.ts';
import { type History, newHistory } from './change/history.ts';
import type { DocumentActions, Opening } from './document-state.ts';
import { ownFileOf } from './files/own-file.ts';
import { isSiteBundle } from './files/site-bundle.ts';
import { type OpenDocument, past, shownPart } from './open-document.ts';

/** A document with nothing on it. */
export const emptySite = (name = 'New site'): SiteFile => ({ format: 'overrow/site', version: 1, units: 'ft', name });

/** The actions that put another document in place. */
export function opening(document: OpenDocument): Pick<DocumentActions, 'open' | 'openFile' | 'newSite' | 'pick'> {
  const { set, emit, files } = document;
  const openFile: DocumentActions['openFile'] = async (file, from = {}) => {
    const next = newHistory(file);
    const opened = await putInPlace(document, next, { ...from, inFile: from.fileName !== undefined });
    if (opened) emit({ what: 'open', history: next, ...ownFileOf(from) });
    return opened;
  };
  const open: DocumentActions['open'] = async (text, openedName, place = null, stamp) => {
    if (isSiteBundle(text)) {
      set({ notice: `${openedName ?? 'This'} is a file of kept sites: read it back under Open, Kept work.` });
      return false;
    }
    const read = readSite(text);
    if (!read.ok) {
      const title = `${openedName ?? 'The site file'} was not opened`;
      set({ problems: { title, errors: read.errors } });
      return false;
    }
    const from = openedName === undefined ? {} : { fileName: openedName, place, ...(stamp && { stamp }) };
    return openFile(read.file, from);
  };
  return {
    open,
    openFile,
    newSite: () => openFile(emptySite()),
    pick: async () => {
      const picked = await files.pick();
      if (picked.kind === 'failed') set({ notice: `The file was not read: ${picked.says}` });
      return picked.kind === 'picked' ? open(picked.text, picked.fileName, picked.place, picked.stamp) : false;
    },
  };
}

/** Works out the plan in slices and puts the document in place; false where another came in between. */
export async function putInPlace(
  document: OpenDocument,
  next: History,
  from: Opening & { readonly inFile: boolean },
): Promise<boolean> {
  const { set, get, warm } = document;
  document.opening += 1;
  const turn = document.opening;
  await warm(toSite(next.file), (done, of) => {
    if (turn === document.opening) set({ busy: { what: `Working out the plan of ${next.file.name}`, done, of } });
  });
  if (turn !== document.opening) return false;
  const view = shownPart(next.file);
  letDraftsGo();
  document.history = next;
  document.own = { ...ownFileOf(from), savedAt: from.inFile ? { edit: next.done.at(-1) } : null };
  set({
    ...view,
    ...past(document),
    selection: [],
    previewed: undefined,
    lastChange: undefined,
    problems: undefined,
    // What was said while the page was opened (that a site was lost, say) stands beside the first document.
    notice: from.notice ?? (get().opened === 0 ? get().notice : undefined),
    busy: undefined,
    opened: get().opened + 1,
  });
  return true;
}
