import type { Point2 } from '../../../routing/site/site.ts';
import type { LayerName } from './layers.ts';

/** A plan drawing as data, in feet of the site: what the SVG, DXF and PDF writers write. Later items lie on top. */
export interface Drawing {
  readonly title: string;
  readonly items: readonly DrawnItem[];
  /** Box around all items, feet; null where there are none. */
  readonly extent: Extent | null;
}

export interface Extent {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export type DrawnItem = DrawnLine | DrawnCircle | DrawnText | DrawnSymbol;

export interface DrawnLine {
  readonly kind: 'line';
  readonly layer: LayerName;
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** Elevations of the points, feet, where the line is one in space. */
  readonly z?: readonly number[];
}

export interface DrawnCircle {
  readonly kind: 'circle';
  readonly layer: LayerName;
  readonly at: Point2;
  /** Feet. */
  readonly radius: number;
}

export const ANCHORS = ['left', 'middle', 'right'] as const;

export interface DrawnText {
  readonly kind: 'text';
  readonly layer: LayerName;
  readonly at: Point2;
  readonly text: string;
  /** Height of capitals, feet of the site. */
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  readonly anchor: (typeof ANCHORS)[number];
  /** It stands just there on every sheet too; other words are lettered anew, to fit the sheet. */
  readonly stays?: true;
}

/** A thing drawn by a sign of its own, the same size on every drawing: see `symbols.ts`. */
export interface DrawnSymbol {
  readonly kind: 'symbol';
  readonly layer: LayerName;
  readonly symbol: 'box' | 'retractor' | 'pull-point' | 'junction' | 'handhole';
  readonly at: Point2;
  readonly z: number;
  /** Id of the element that it stands for. */
  readonly of: string;
}
