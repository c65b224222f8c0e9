import type { Point3 } from '../../routing/site/site.ts';

/** What a hung load is made of; `pull` is what a cord carried to an inlet pulls beyond its own weight. */
export type MadeOf = 'conduit' | 'wire' | 'fittings' | 'trapeze' | 'box' | 'module' | 'retractor' | 'cord' | 'pull';

/** Pounds, or pounds a foot, of each of them that there is. */
export type Made = Readonly<Partial<Record<MadeOf, number>>>;

/** What hangs from one place of a member. */
export interface HungPoint {
  readonly at: Point3;
  readonly pounds: number;
  readonly of: readonly string[];
  readonly made: Made;
  /** Pull there that is not downward, pounds; absent where there is none. */
  readonly sideways?: number;
  /** Which way that pulls, degrees counter-clockwise from +x. */
  readonly heading?: number;
}

/** What hangs evenly along a part of a member. */
export interface HungRun {
  readonly from: Point3;
  readonly to: Point3;
  /** Per foot along the member, whatever the units of the file. */
  readonly poundsPerFoot: number;
  readonly of: readonly string[];
  /** Per foot, likewise. */
  readonly made: Made;
}

/** What one member carries of all that hangs overhead, in order along it. */
export interface Hung {
  readonly member: string;
  readonly pounds: number;
  readonly points: readonly HungPoint[];
  readonly runs: readonly HungRun[];
}
