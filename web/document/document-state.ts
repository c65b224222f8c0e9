import type { UncountedPlan } from '../../calc/plan/plan-shape.ts';
import type { SiteError } from '../../routing/site/file/place.ts';
import type { Site, SiteFile } from '../../routing/site/site.ts';
import type { Edit } from './change/edit.ts';
import type { Ref } from './change/element-lists.ts';
import type { History, HistoryTurn } from './change/history.ts';
import type { SelectMode } from './change/selection.ts';
import type { FilePlace, Stamp } from './files/files.ts';
import type { OwnFile } from './files/own-file.ts';

export const STATIONS = ['layout', 'price', 'build'] as const;
/** What a person is doing with the site: lay it out, price it, build it. */
export type Station = (typeof STATIONS)[number];

/** Why a file was not opened: every error with its place. */
export interface Problems {
  readonly title: string;
  readonly errors: readonly SiteError[];
}

/** Long work under way. */
export interface Busy {
  readonly what: string;
  readonly done: number;
  readonly of: number;
}

/** Where the work stands with the file a person saves. */
export interface Saved {
  /** The site as it stands is in a file of the person's own. */
  readonly inFile: boolean;
  /** Name of that file, where there is one. */
  readonly fileName?: string;
  /** It went to the downloads; whether it arrived there is not known. */
  readonly sent?: boolean;
}

/** Something that a person must know of, and what can be done about it. It stays until it is answered or closed. */
export interface Alert {
  readonly says: string;
  readonly acts?: readonly { readonly name: string; readonly act: () => void }[];
}

/**
 * How the browser keeps the open site. `kept`: all of it; `writing`: the last edits are on their way; `failed`: it
 * could not, `says` tells why and what to do; `watching`: another tab edits this site, this one follows.
 */
export interface Keeping {
  readonly kind: 'off' | 'loading' | 'kept' | 'writing' | 'failed' | 'watching';
  readonly says?: string;
  /** While watching: makes this tab the one that edits. */
  readonly takeOver?: () => void;
}

/** The last change, so that a view can show where it happened. */
export interface LastChange {
  readonly how: 'done' | 'undone' | 'redone';
  readonly name: string;
  readonly refs: readonly Ref[];
}

export interface DocumentData {
  /** The document as shown: during a drag with the previewed edit in it. */
  readonly file: SiteFile;
  readonly site: Site;
  readonly plan: UncountedPlan;
  readonly name: string;
  readonly selection: readonly Ref[];
  /** Name of the edit that undo would take back (redo do again). */
  readonly undoName?: string | undefined;
  readonly redoName?: string | undefined;
  readonly saved: Saved;
  readonly keeping: Keeping;
  readonly problems?: Problems | undefined;
  readonly station: Station;
  readonly notice?: string | undefined;
  readonly alerts: readonly Alert[];
  readonly busy?: Busy | undefined;
  /** The edit under the hand, not yet in the history. */
  readonly previewed?: Edit | undefined;
  readonly lastChange?: LastChange | undefined;
  /** Grows by one whenever another document is opened: the moment to fit the board to it. */
  readonly opened: number;
}

/** What comes with a document that is opened. Without a file name it is not in a file yet. */
export interface Opening extends OwnFile {
  readonly notice?: string;
}

export interface DocumentActions {
  /**
   * Reads a site file strictly and opens it. Where it is invalid, or a newer version's, `problems` lists every place
   * and the open site stays as it was. True where it was opened.
   */
  readonly open: (text: string, fileName?: string, place?: FilePlace, stamp?: Stamp) => Promise<boolean>;
  /** Opens a document that is known to be valid. False where another was opened before this one was ready. */
  readonly openFile: (file: SiteFile, opening?: Opening) => Promise<boolean>;
  /** Opens an empty site. */
  readonly newSite: () => Promise<boolean>;
  /**
   * Does an edit as one undo entry. False where it was not done: it has no steps, it would make the file invalid (then
   * `notice` says why), or another tab edits this site.
   */
  readonly apply: (edit: Edit) => boolean;
  /**
   * Does an edit that puts in a great deal (an array, a paste, a proposal) as `apply` does, after working out its plan
   * in slices with `busy` told. False also where the document changed in the meantime.
   */
  readonly applyLarge: (edit: Edit) => Promise<boolean>;
  /**
   * Shows the document with an edit in it that is made against `committed().file`; null shows it without. Not checked
   * until it is committed: for moves and other edits whose elements keep their shape.
   */
  readonly preview: (edit: Edit | null) => void;
  /** Does the previewed edit as one undo entry, as `apply` does. */
  readonly commitPreview: () => boolean;
  readonly cancelPreview: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly select: (refs: readonly Ref[], mode?: SelectMode) => void;
  readonly setStation: (station: Station) => void;
  /**
   * Saves to the person's own file: to the one it came from where the browser can, with `as` to one to be named. Where
   * another program has changed that file an alert asks; with `over` it is written all the same.
   */
  readonly save: (options?: { readonly as?: boolean; readonly over?: boolean }) => Promise<boolean>;
  /** Opens a file that the person picks. False where none was picked or it is invalid. */
  readonly pick: () => Promise<boolean>;
  readonly notify: (notice: string | null) => void;
  readonly warn: (alert: Alert) => void;
  readonly unwarn: (says: string) => void;
  readonly dismissProblems: () => void;
  /** The document without the previewed edit, and its past: what edits are made against during a drag. */
  readonly committed: () => History;
}

export type DocumentState = DocumentData & DocumentActions;

/** What the keeping of the site hears, in order; `history` is the document after it. */
export type DocumentEvent =
  | ({ readonly what: 'open'; readonly history: History } & OwnFile)
  | { readonly what: HistoryTurn; readonly edit: Edit; readonly history: History }
  | ({
      readonly what: 'saved';
      readonly fileName: string;
      readonly place: FilePlace;
      readonly history: History;
    } & OwnFile);
/** A change of the open document or of what is known of it. */
export type ChangeEvent = Exclude<DocumentEvent, { readonly what: 'open' }>;
