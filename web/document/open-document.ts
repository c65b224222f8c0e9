import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import type { History } from './change/history.ts';
import type { DocumentData, DocumentEvent, DocumentState } from './document-state.ts';
import type { FileDoor } from './files/files.ts';
import type { OwnState } from './files/own-file.ts';
import { pagePlan } from './planning.ts';
import type { WarmUp } from './warm-up.ts';

/** What the store needs of the world outside it. */
export interface DocumentWorld {
  readonly files: FileDoor;
  readonly warm: WarmUp;
}

/** The document behind the state, and what the parts of the store work on. */
export interface OpenDocument extends DocumentWorld {
  readonly set: (part: Partial<DocumentState>) => void;
  readonly get: () => DocumentState;
  readonly emit: (event: DocumentEvent) => void;
  history: History;
  /** The document is in its file when the newest edit at the time of the last save is the newest again. */
  own: OwnState;
  /** Grows by one with every opening that begins: what was begun under an older one comes too late. */
  opening: number;
}

/** The part of the state that is the file and what the engine makes of it. */
export function shownPart(file: SiteFile): Pick<DocumentData, 'file' | 'site' | 'plan' | 'name'> {
  const site = toSite(file);
  return { file, site, plan: pagePlan(site), name: file.name };
}

/** Where the document stands with its own file. */
export const savedNow = ({ history, own }: OpenDocument): DocumentData['saved'] => ({
  inFile: own.savedAt !== null && own.savedAt.edit === history.done.at(-1),
  ...(own.fileName !== undefined && { fileName: own.fileName }),
  ...(own.sent && { sent: true }),
});

/** The part of the state that is told from the past of the document. */
export const past = (document: OpenDocument): Pick<DocumentData, 'undoName' | 'redoName' | 'saved'> => ({
  undoName: document.history.done.at(-1)?.name,
  redoName: document.history.undone.at(-1)?.name,
  saved: savedNow(document),
});
