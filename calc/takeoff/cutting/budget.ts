/** Steps that all parts of one search may still take together; at none left each gives what it has. */
export interface Budget {
  left: number;
}

/** Some ten seconds of work at most, whatever the numbers; the hardest published instances that are proved take a part of it. */
export const CUT_STEPS = 4_000_000_000;

export const isSpent = ({ left }: Budget): boolean => left <= 0;
