import type { Point2 } from '../../../routing/site/site.ts';

/** What a shape of a section is of. */
export type SectionPart =
  | 'vehicle'
  | 'column'
  | 'equipment'
  | 'member'
  | 'conduit'
  | 'raceway'
  | 'trapeze'
  | 'rod'
  | 'box'
  | 'retractor'
  | 'pull point'
  | 'cord at rest'
  | 'cord out'
  | 'inlet zone'
  | 'trench';

interface Shaped {
  readonly part: SectionPart;
  /** Of the element that it is of; of a conduit its name. */
  readonly id: string;
  /** The cut goes through it; else it is seen past the cut. */
  readonly isCut: boolean;
  /** How far past the cut it is, feet: what is farther is drawn before. */
  readonly away: number;
}

/** A closed outline, [across, elevation] in feet. */
export interface SectionOutline extends Shaped {
  readonly kind: 'outline';
  readonly points: readonly Point2[];
}

export interface SectionLine extends Shaped {
  readonly kind: 'line';
  readonly points: readonly Point2[];
}

export interface SectionRound extends Shaped {
  readonly kind: 'round';
  readonly at: Point2;
  readonly radius: number;
  /** Elevation of the path that it is of, feet. */
  readonly elevation: number;
}

export type SectionShape = SectionOutline | SectionLine | SectionRound;

/** A part of the ground that the cut goes over, from left to right. */
export interface GroundSpan {
  readonly from: number;
  readonly to: number;
  readonly use: 'stall' | 'drive aisle' | 'fire lane' | 'walk' | 'access aisle' | 'working space';
  /** As it is called: a stall by its label. */
  readonly name: string;
  /** The lowest thing over it that hangs, and its elevation; null where nothing does. */
  readonly clear: { readonly height: number; readonly under: string; readonly across: number } | null;
  /** The clear height that the rules of the site ask for there, feet; null where none is asked for. */
  readonly asked: number | null;
}

/** A height over grade, or a depth under it, to be written beside what it is of. Feet. */
export interface SectionHeight {
  readonly across: number;
  readonly elevation: number;
  readonly says: string;
}

/** A trench that the cut goes through. Feet. */
export interface TrenchCut {
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  /** From grade to the top of the highest raceway in it. */
  readonly cover: number;
  readonly surface: string;
  readonly ids: readonly string[];
}

/** What a cut shows, seen square to it: [across, elevation] in feet, from the left end of the cut and from grade. */
export interface Section {
  readonly length: number;
  /** From the farthest to what is cut. */
  readonly shapes: readonly SectionShape[];
  readonly ground: readonly GroundSpan[];
  readonly heights: readonly SectionHeight[];
  readonly trenches: readonly TrenchCut[];
  /** Lowest and highest that anything of it is. */
  readonly low: number;
  readonly high: number;
}

export const rectangle = (from: number, to: number, low: number, high: number): readonly Point2[] => [
  [from, low],
  [to, low],
  [to, high],
  [from, high],
];
