import type { Point2, Site, SiteFile } from '../../../routing/site/site.ts';
import type { Edit } from '../../document/change/edit.ts';
import type { ElementOf, ListName, Ref } from '../../document/change/element-lists.ts';

/** A place that the hand has chosen, feet. `z` and `ref` where it lies on something that is there already. */
export interface Spot {
  readonly at: Point2;
  readonly z: number | null;
  readonly ref: Ref | null;
  /** Its elevation follows the member that it hangs under, or one that the run has hung under before. */
  readonly hangs?: true;
}

/** What is being drawn: the places set so far, and the one under the hand. */
export interface BoardDraft {
  readonly spots: readonly Spot[];
  readonly next: Spot | null;
  /** The shape is whole: it stands, and can still be changed in its form, until it is set. */
  readonly whole: boolean;
}

export const EMPTY: BoardDraft = { spots: [], next: null, whole: false };

/** The document that a draft is drawn on, without the draft. */
export interface Ground {
  readonly file: SiteFile;
  /** The same in feet. */
  readonly site: Site;
}

/** What the foot line says while a tool is in the hand. */
export interface Advice {
  readonly action: string;
  readonly next: string;
  readonly keys: readonly (readonly [key: string, does: string])[];
}

/**
 * One action that draws. Of a `point` the first press makes the whole, of a `line` the second; a `path` and an `outline`
 * go on until they are finished. Everything else follows from the draft and the options by pure functions.
 */
export interface DrawTool<Options> {
  readonly shape: 'point' | 'line' | 'path' | 'outline';
  /** Set as soon as it is whole, where there is nothing to choose. */
  readonly atOnce: boolean;
  /** The list whose new elements are selected when it is set. */
  readonly list: ListName;
  /** The edit that puts in what is drawn, the place under the hand counted as set; null while there is too little. */
  readonly edit: (ground: Ground, draft: BoardDraft, options: Options) => Edit | null;
  /** What is said beside the hand: measures, and what the drawn thing would come to. */
  readonly words: (ground: Ground, draft: BoardDraft, options: Options) => readonly string[];
  readonly advice: (draft: BoardDraft, options: Options) => Advice;
  /** The places set after another is: a raceway goes up or down to it. */
  readonly added?: (ground: Ground, draft: BoardDraft, spot: Spot, options: Options) => readonly Spot[];
  /** A typed elevation: what it makes of the draft and the options. */
  readonly raised?: (
    draft: BoardDraft,
    z: number,
    options: Options,
  ) => { readonly draft: BoardDraft; readonly options: Options };
  /** The options for the next one, once an edit was done. */
  readonly after?: (options: Options, ground: Ground) => Options;
  /** Why what is drawn so far cannot be finished, for whoever wants to. */
  readonly lacks?: (draft: BoardDraft) => string;
  /** The tool that it is by these options, where that is another. */
  readonly instead?: (options: Options) => DrawTool<Options> | null;
  /** Another way round, by one key: the other side, a quarter turn. */
  readonly turned?: (options: Options) => Options;
}

/** A drawing action: what it is called, the letter that begins it, and what its form begins with. */
export interface Action<Options> {
  readonly name: string;
  readonly key: string;
  /** For the list of keys: `a keep-out`. */
  readonly draws: string;
  readonly first: Options;
  /** What it lays out on the ground is not drawn to the beams above it. */
  readonly grounded?: true;
}

/** What one of a list is made of, where all that it takes are the places that are pressed. Lengths in feet. */
interface MakesOne<L extends ListName, Options> {
  readonly list: L;
  /** What new ids begin with. */
  readonly letters: string;
  readonly shape: 'point' | 'line' | 'outline';
  /** What each press is to be; of an outline that is always said alike. */
  readonly presses: readonly string[];
  readonly made: (id: string, places: readonly Point2[], options: Options) => ElementOf<L>;
  /** The option whose other sign is the other way round, and what the key for it is said to do. */
  readonly turns?: { readonly option: keyof Options; readonly does: string };
}

export type Makes<Options> = { readonly [L in ListName]: MakesOne<L, Options> }[ListName];

/** An action whose tool follows from what it makes (`tools/plain.ts`). */
export interface PlainAction<Options> extends Action<Options> {
  readonly makes: Makes<Options>;
}

/** The places of a draft with the one under the hand. */
export const spotsOf = ({ spots, next, whole }: BoardDraft): readonly Spot[] =>
  next && !whole ? [...spots, next] : spots;

/** The two ends of a drawn line; null while they are one place. */
export function lineOf(draft: BoardDraft): readonly [Point2, Point2] | null {
  const [a, b] = spotsOf(draft);
  if (!a || !b) return null;
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) > 0.05 ? [a.at, b.at] : null;
}
