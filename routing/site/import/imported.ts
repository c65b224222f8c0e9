import type { Point2 } from '../site.ts';

/** What keeps a file from being read: where in it, and what was expected there. */
export interface ImportFault {
  readonly place: string;
  readonly says: string;
}

export type Imported<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: ImportFault };

export const refused = (place: string, says: string): { readonly ok: false; readonly fault: ImportFault } => ({
  ok: false,
  fault: { place, says },
});

/** How a line of a drawing looks; what is alike is one object. */
export interface LineLook {
  /** Red, green and blue as 0xRRGGBB; null for that of ink. */
  readonly color: number | null;
  /** Millimetres on paper; 0 where it says none. */
  readonly weight: number;
  /** Width in the drawing's own units; 0 for a line without one. */
  readonly width: number;
  /** Lengths of dashes and gaps in turn, in the drawing's own units; none for a line drawn through. */
  readonly dash: readonly number[];
  /** Whether what it encloses is filled. */
  readonly filled: boolean;
}

/** A line of a drawing, in the drawing's own units; a closed one does not repeat its first point, a point alone is a mark. */
export interface ImportedLine {
  readonly layer: string;
  readonly points: readonly Point2[];
  readonly closed: boolean;
  readonly look?: LineLook;
}

/** A line of words of a drawing, in the drawing's own units. */
export interface DrawnWords {
  readonly layer: string;
  /** On the base line, at the end or the middle that `anchor` names. */
  readonly at: Point2;
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  readonly anchor: 'left' | 'middle' | 'right';
  /** No wider than this, in the drawing's own units; absent where it may run on. */
  readonly width?: number;
  readonly words: string;
}

/** A line drawing of another program, flattened: blocks expanded, arcs as short chords. */
export interface LineDrawing {
  readonly lines: readonly ImportedLine[];
  readonly words: readonly DrawnWords[];
  /** Feet in a unit of the drawing; null where the file does not say. */
  readonly feetPerUnit: number | null;
  /** Why it is taken to be in that unit: "in millimeters, by its header". */
  readonly unitSays: string;
  /** Half of the last digit of its coordinates, in its own units. */
  readonly rounding: number;
  /** Kinds of entity that were left out, with how many of each. */
  readonly skipped: ReadonlyMap<string, number>;
  /** What a person should know of what is not shown, in sentences. */
  readonly notes: readonly string[];
}

/** No file that is read may hold more; the limits are far past any site plan and keep a bad file from stopping the page. */
export const BUDGET = {
  /** Characters of a text file. */
  characters: 64_000_000,
  /** Entities or features, blocks expanded. */
  entities: 300_000,
  /** Points, arcs flattened. */
  points: 2_000_000,
  /** Lines of words, and characters in them. */
  words: 50_000,
  letters: 2_000_000,
  /** Characters of one note. */
  note: 32_000,
  /** Blocks within blocks, collections within collections. */
  nesting: 12,
  /** No coordinate of a drawing is larger, in its own units: a grid's millimetres reach 1e10. */
  coordinate: 1e12,
} as const;
