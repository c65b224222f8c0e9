import type { Equipment } from '../../../../routing/site/site.ts';
import { type Parts, siteOf, source, supplied } from '../small-site.ts';

export const of = (parts: Parts, id: string): number | undefined =>
  supplied(siteOf(parts)).supply.equipment.find((one) => one.id === id)!.faultAmps;

export const utility = (rest: Partial<Equipment>): Equipment => ({ ...source(480), ...rest });
/** Conductors as the tables have them and transformers as their nameplates: one case, to be worked by hand. */
export const AS_PRINTED = { fault: { coldC: 75, impedanceTolerance: 0 } } as const;
