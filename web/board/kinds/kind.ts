import type { Box } from '../../../routing/plane/box.ts';
import type { Part, PartAt } from '../../../routing/site/kinds/kind.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import type { PictureBoard } from '../painting/painting.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import type { Aims } from '../snap/aims.ts';

/**
 * What is drawn of an element, with its box for culling and picking. A mark is the same object for as long as everything
 * that it shows is the same, so that two scenes differ in just those marks that differ.
 */
export interface ElementMark<L extends ListName = ListName> extends Box {
  readonly list: L;
  readonly id: string;
}

/** One kind of picture of the marks of a kind, all drawn in a single go. */
export interface Picture<M> {
  readonly name: string;
  /** From the ground up: what lies higher is drawn later, among all pictures of the board. */
  readonly over: number;
  /** The layer that it is drawn on; both where absent. */
  readonly on?: 'base' | 'live';
  /** Pixels to a foot below which the base leaves it out. */
  readonly from?: number;
  readonly draw: (pen: BoardPen, frame: Frame, marks: readonly M[], painting: PictureBoard) => void;
}

/** How a handle is drawn: aside, with a leader, where two would lie on one spot. */
export interface HandleLook {
  readonly shape: 'square' | 'round';
  /** Pixels. */
  readonly aside: readonly [dx: number, dy: number];
}

/** How the hand takes hold of elements of a kind. */
export interface Hold<M> {
  /** The lower, the sooner it is taken where several lie under the hand: the topmost and smallest first. */
  readonly rank: number;
  /** The lower, the sooner the keys come to it as they go from element to element: first what is worked on most. */
  readonly tour: number;
  /** Taken only within this share of the hand's reach. */
  readonly reach?: number;
  /** It lies under or over much else: a box takes it only where nothing else lies there. */
  readonly wide?: true;
  /** It is moved only once it has been chosen, for a drag that begins on it draws a box. */
  readonly ground?: true;
  /** It is drawn to raceways and members where it is moved. */
  readonly rides?: true;
  /** Its name stands on the drawing: a hand over it shows none. */
  readonly named?: true;
  /** The outline that a hand over it is shown; by its points where absent. */
  readonly outline?: (mark: M) => readonly Point2[];
  /** How far off a place it is, feet; by its points where absent. */
  readonly distance?: (mark: M, at: Point2) => number;
}

/** All that the board knows of one kind of element. */
export interface BoardKind<L extends ListName, M extends ElementMark<L>> {
  /** What the switches call its elements; by the trade's word for many where absent. */
  readonly called?: string;
  /** Null where there is nothing of it to draw. */
  readonly mark: (element: Site[L][number], site: Site) => M | null;
  /** Some elements have no mark, so that marks do not stand in the places of the elements. */
  readonly partial?: true;
  /** What else of a site its marks show. */
  readonly also?: (site: Site) => readonly unknown[];
  /** Which of its marks are looked at when the whole lot is shown; all where absent. */
  readonly extent?: (mark: M) => boolean;
  /** It covers the ground, and is not what is built. */
  readonly ground?: true;
  /** Words beside the hand do not hide it. */
  readonly keptClear?: true;
  readonly pictures: readonly Picture<M>[];
  /** Absent where the hand does not take it. */
  readonly hold?: Hold<M>;
  /** What the hand is drawn to. */
  readonly aims?: (mark: M, aims: Aims) => void;
  /** How its handles are drawn where they are not squares on their places. */
  readonly handle?: (part: Part, all: readonly PartAt[], scale: number) => HandleLook;
}
