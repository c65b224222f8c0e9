import type { Point2 } from '../../../routing/site/site.ts';
import type { LayerName } from '../drawing/layers.ts';
import type { Ink } from '../pdf/kit/ink.ts';
import type { Weight } from '../pdf/kit/lettering/lettering.ts';

/** What a sheet has on it, in points from its lower left corner, as other formats than the PDF write it. */
export type SheetMark = LineMark | FillMark | CircleMark | TextMark | DimensionMark;

interface OnLayer {
  /** Null for what belongs to the sheet: its frame, title block and the titles of its views. */
  readonly layer: LayerName | null;
}

export interface LineMark extends OnLayer {
  readonly kind: 'line';
  readonly points: readonly Point2[];
  readonly closed: boolean;
  readonly ink: Ink;
}

export interface FillMark extends OnLayer {
  readonly kind: 'fill';
  readonly points: readonly Point2[];
  readonly colour: string;
}

export interface CircleMark extends OnLayer {
  readonly kind: 'circle';
  readonly at: Point2;
  readonly radius: number;
  readonly ink: Ink | null;
  readonly fill?: string;
}

export interface TextMark extends OnLayer {
  readonly kind: 'text';
  readonly words: string;
  /** The left end of its base line. */
  readonly at: Point2;
  /** As it is printed. */
  readonly width: number;
  /** Height of capitals. */
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  readonly weight: Weight;
  readonly colour: string;
  /** The element that it names, or that it tells of. */
  readonly of?: string;
}

/** One dimension: its line, where what it measures begins and ends, and its figure. */
export interface DimensionMark extends OnLayer {
  readonly kind: 'dimension';
  /** Ends of the dimension line, and what they stand for. */
  readonly from: Point2;
  readonly to: Point2;
  readonly fromOrigin: Point2;
  readonly toOrigin: Point2;
  /** Of the line, degrees counter-clockwise. */
  readonly turn: number;
  /** Feet of the site. */
  readonly feet: number;
  /** Null where it has no room for one. */
  readonly figure: Pick<TextMark, 'words' | 'at' | 'width' | 'height' | 'turn'> | null;
  /** Half of the slanting tick at either end. */
  readonly tick: number;
  /** How far extension lines go past the dimension line. */
  readonly past: number;
}
