import type { TrafficRating } from '../plan-file/branches.ts';

/** Nominal sizes by their longer side, inches. Common trade sizes, from memory. */
export const HANDHOLE_SIZES: readonly (readonly [size: string, inches: number])[] = [
  ['12 x 12 in', 12],
  ['13 x 24 in', 24],
  ['17 x 30 in', 30],
  ['24 x 36 in', 36],
  ['30 x 48 in', 48],
  ['36 x 60 in', 60],
];

/**
 * Classes of traffic, the least first: walks and lawns; stalls and paving that cars come over now and then; aisles that
 * are driven along. ANSI/SCTE 77 and AASHTO H-20, from memory.
 */
export const TRAFFIC_RATINGS: readonly TrafficRating[] = ['Tier 8', 'Tier 22', 'H-20'];
