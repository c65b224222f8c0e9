import type { Feeder } from '../../../routing/site/site.ts';

/**
 * Whether the length of a feeder is known: given in the file, or that of its way along the raceways. Where it is not, the
 * supply is worked as if it had none, and neither its length nor its drop is a figure to be told.
 */
export const isLengthKnown = (
  { length }: Pick<Feeder, 'length'>,
  solved: { readonly length: number } | undefined,
): boolean => length !== undefined || (solved !== undefined && solved.length > 0);
