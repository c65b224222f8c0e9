import type { MarginKind, Margins } from '../../calc/plan/margins.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { leftLength, nearestInch, spareOrShort } from './lengths.ts';

/** Words for the way a car stands. */
export const PARKED = { 'nose-in': 'nose in', 'back-in': 'backed in' } as const;

/** A margin as it is said beside its bar: what is left or missing, and of what. */
export interface MarginWords {
  /** In bold: "3' 10" spare", "38' 0" too long". */
  readonly left: string;
  /** After it: "of 23' 0"". */
  readonly limit: string;
  /** In full: "19' 2" of 23' 0"". */
  readonly full: string;
}

export function marginWords(kind: MarginKind, margins: Margins, units: Units): MarginWords | null {
  const margin = margins[kind];
  if (!margin) return null;
  const { left, used, limit } = margin;
  switch (kind) {
    case 'cord':
      return {
        left: spareOrShort(left, units),
        limit: `of ${nearestInch(limit, units)}`,
        full: Number.isFinite(used)
          ? `needs ${nearestInch(used, units)} of ${nearestInch(limit, units)}`
          : 'no way there',
      };
    case 'branch':
      return {
        left: left < 0 ? `${leftLength(left, units)} too long` : `${nearestInch(left, units)} spare`,
        limit: `of ${nearestInch(limit, units)}`,
        full: `${nearestInch(used, units)} of conductor, limit ${nearestInch(limit, units)}`,
      };
    case 'volts': {
      const total = margins.volts?.of === 'total';
      return {
        left: left < 0 ? `${(-left).toFixed(2)}% over` : `${left.toFixed(2)}% spare`,
        limit: `of ${limit}%${total ? ' in all' : ''}`,
        full: `drops ${used.toFixed(2)}%${total ? ' from the source in all' : ''}, limit ${limit}%`,
      };
    }
  }
}
