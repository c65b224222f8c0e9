import type { ListName } from '../../document/element-lists.ts';
import { aisles } from './aisles.ts';
import { columns } from './columns.ts';
import { drops } from './drops.ts';
import { equipment } from './equipment.ts';
import { feeders } from './feeders.ts';
import { keepouts } from './keepouts.ts';
import type { BoardKind, ElementMark } from './kind.ts';
import { members } from './members.ts';
import { pullpoints } from './pullpoints.ts';
import { raceways } from './raceways.ts';
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
