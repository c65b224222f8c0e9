import type { ListName } from '../../document/change/element-lists.ts';
import type { Action, PlainAction } from '../draw/draft.ts';
import { FIRST_OPTIONS } from '../draw/options.ts';
import { aisles } from './aisles.ts';
import { boundaries, boundaryAction } from './boundaries.ts';
import { cloudAction, clouds } from './clouds.ts';
import { columns } from './columns.ts';
import { dimensionAction, dimensions } from './dimensions.ts';
import { drops } from './drops.ts';
import { equipment } from './equipment.ts';
import { feeders } from './feeders.ts';
import { keepouts } from './keepouts.ts';
import type { BoardKind, ElementMark } from './kind.ts';
import { members } from './members.ts';
import { noteAction, notes } from './notes.ts';
import { pullpoints } from './pullpoints.ts';
import { raceways } from './raceways.ts';
import { sectionAction, sections } from './sections.ts';
import { stalls } from './stalls.ts';

/** Every kind of element on the board, by its list; null for what is shown by others. */
const BOARD_KINDS = {
  aisles,
  keepouts,
  members,
  stalls,
  columns,
  equipment,
  feeders,
  raceways,
  pullpoints,
  drops,
  loads: null,
  chargers: null,
  notes,
  dimensions,
  clouds,
  sections,
  boundaries,
} as const satisfies { readonly [L in ListName]: Pick<BoardKind<L, ElementMark<L>>, 'mark'> | null };

type Kinds = typeof BOARD_KINDS;

/** The lists whose elements have marks. */
export type MarkedList = { [L in ListName]: Kinds[L] extends null ? never : L }[ListName];
export const MARKED_LISTS = (Object.keys(BOARD_KINDS) as ListName[]).filter(isMarked);

export type MarkIn<L extends MarkedList> = Kinds[L] extends BoardKind<L, infer M> ? M : never;
/** The mark of any element. */
export type AnyMark = { [L in MarkedList]: MarkIn<L> }[MarkedList];

export function isMarked(list: ListName): list is MarkedList {
  return BOARD_KINDS[list] !== null;
}

/** A kind, whatever its elements. */
export const boardKind = (list: MarkedList): BoardKind<ListName, ElementMark> =>
  BOARD_KINDS[list] as unknown as BoardKind<ListName, ElementMark>;

/** The kinds that the hand takes hold of, in an order of theirs. */
export const heldBy = (order: 'rank' | 'tour'): readonly MarkedList[] =>
  MARKED_LISTS.filter((list) => boardKind(list).hold).sort(
    (a, b) => boardKind(a).hold![order] - boardKind(b).hold![order],
  );

const action = <Options>(own: Action<Options>): Action<Options> => own;
const plainAction = <Options>(own: PlainAction<Options>): PlainAction<Options> => own;

/**
 * The actions that draw: mostly one for a kind, a canopy of several. What each does that
 * is not plain is in `draw/tools/tools.ts`, which the first screen does without.
 */
export const ACTIONS = {
  stalls: action({
    name: 'Stalls',
    key: 'S',
    draws: 'stalls',
    first: FIRST_OPTIONS.stalls,
    grounded: true,
  }),
  canopy: action({ name: 'Canopy', key: 'C', draws: 'a canopy', first: FIRST_OPTIONS.canopy }),
  equipment: action({
    name: 'Equipment',
    key: 'E',
    draws: 'equipment',
    first: FIRST_OPTIONS.equipment,
    grounded: true,
  }),
  raceway: action({ name: 'Raceway', key: 'R', draws: 'a raceway', first: FIRST_OPTIONS.raceway }),
  drops: action({ name: 'Drops', key: 'D', draws: 'drops', first: FIRST_OPTIONS.drops }),
  keepout: action({
    name: 'Keep-out',
    key: 'K',
    draws: 'a keep-out',
    first: FIRST_OPTIONS.keepout,
    grounded: true,
  }),
  aisle: plainAction({
    name: 'Aisle',
    key: 'A',
    draws: 'an aisle',
    first: FIRST_OPTIONS.aisle,
    grounded: true,
    makes: {
      list: 'aisles',
      letters: 'A',
      shape: 'outline',
      presses: [],
      made: (id, corners, { kind }) => ({ id, outline: [...corners], ...(kind !== 'drive' && { kind }) }),
    },
  }),
  pullpoint: action({
    name: 'Pull point',
    key: 'P',
    draws: 'a pull point',
    first: FIRST_OPTIONS.pullpoint,
  }),
  member: action({
    name: 'Member',
    key: 'B',
    draws: 'a beam or purlin',
    first: FIRST_OPTIONS.member,
  }),
  column: plainAction({
    name: 'Column',
    key: 'O',
    draws: 'a column',
    first: FIRST_OPTIONS.column,
    makes: {
      list: 'columns',
      letters: 'C',
      shape: 'point',
      presses: ['Press where it stands.'],
      made: (id, [at], { size, rotation, height }) => ({
        id,
        at: at!,
        size,
        ...(rotation !== 0 && { rotation }),
        ...(height !== null && { height }),
      }),
    },
  }),
  note: noteAction,
  dimension: dimensionAction,
  cloud: cloudAction,
  section: sectionAction,
  boundary: boundaryAction,
};

export type DrawToolName = keyof typeof ACTIONS;
/** What the forms of the drawing actions hold. Kept while the page is open, never in the file. */
export type DrawOptions = {
  readonly [T in DrawToolName]: (typeof ACTIONS)[T] extends Action<infer Options> ? Options : never;
};
