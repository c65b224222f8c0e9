import type { Equipment, Point3 } from '../../../site/site.ts';

/** What is to be joined to a piece of equipment. */
export interface LatticeWish {
  readonly equipment: Equipment;
  /** Boxes of drops. */
  readonly boxes: readonly Point3[];
  readonly place: 'overhead' | 'underground';
  /** Supports of what is laid overhead may be so far apart. */
  readonly supportEvery: number;
  /** What is laid in the ground lies so deep, feet. */
  readonly cover: number;
  /** A foot in the ground, and of a stringer, costs so many times what the hangers of a foot overhead do. */
  readonly times: { readonly ground: number; readonly stringer: number };
  /** Where nothing holds it, it hangs all the same: there is no other way. */
  readonly inAir: boolean;
  /** Round every keep-out of the site and between any two, however far off, in place of lines along steel and columns. */
  readonly isWide?: boolean;
  /** How many circuits more find room in the conduits between two places of raceways that are there. */
  readonly room: (a: Point3, b: Point3) => number;
}
