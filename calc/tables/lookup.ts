/** Look-ups in the tables of an edition, by subject. */
export * from './ampacity-of.ts';
export * from './conductor-of.ts';
export * from './equipment-of.ts';
export * from './protection-of.ts';
export * from './raceway-of.ts';
export * from './sizes.ts';
