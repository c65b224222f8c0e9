/** What is bought for a row that is cut from sticks or reels, or ordered to length; whole feet. */
export interface Bought {
  /** Feet; its share by length where rows are cut from the same sticks. */
  readonly quantity: number;
  /** Length of one stick or reel; 0 where it is ordered to length. */
  readonly stock: number;
  /** Of it left over. */
  readonly left: number;
}

export interface TakeoffRow {
  readonly item: string;
  readonly spec: string;
  readonly quantity: number;
  /** Absent where just the quantity is bought. */
  readonly bought?: Bought;
  /** How much of the quantity is worked off the ground, higher than a hand reaches. */
  readonly high: number;
  /** How much of that is worked from a lift, higher than a ladder serves; absent where none is. */
  readonly lift?: number;
  /** `ft` is rewritten to the file's units on output. */
  readonly unit: string;
  readonly basis: string;
  /** Ids of what the row is made of. */
  readonly of: readonly string[];
  /**
   * How much of it, before waste, in each of them, how much of that off the ground and from a lift (`aloft`, absent where
   * none is), and the lengths that it is cut for where they are several.
   */
  readonly parts: readonly {
    readonly of: string;
    readonly quantity: number;
    readonly aloft?: { readonly high: number; readonly lift: number };
    readonly cut?: readonly number[];
  }[];
}
