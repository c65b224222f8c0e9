/** Usual sizes of a utility's pad-mounted and pole transformers, kVA; from memory of the trade's catalogs. */
const SIZES: Readonly<Record<1 | 3, readonly number[]>> = {
  1: [10, 15, 25, 37.5, 50, 75, 100, 167, 250, 333, 500],
  3: [45, 75, 112.5, 150, 225, 300, 500, 750, 1000, 1500, 2000, 2500, 3000, 3750],
};

/** What they go by, fit for a drawing. */
export const TRANSFORMER_SIZES_SOURCE = 'usual sizes of pad-mounted and pole transformers; the utility sizes its own';

/** Smallest usual size of at least so many kVA; null past the largest. */
export const utilityTransformer = (kva: number, phases: 1 | 3): number | null =>
  SIZES[phases].find((size) => kva <= size * (1 + 1e-9)) ?? null;
