import type { MarginKind, Margins } from '../../calc/margins.ts';
import type { Units } from '../../routing/site/vocabulary.ts';
import { leftLength, nearestInch, spareOrShort } from './lengths.ts';

/** Words for the way a car stands. */
export const PARKED = { 'nose-in': 'nose in', 'back-in': 'backed in' } as const;

/** A margin as it is said beside its bar: what is left or missing, and of what. */
export interface MarginWords {
  /** In bold: "3' 10" spare", "38' 0" too long". */
  readonly left: string;
  /** After it: "19' 2" of 23' 0"". */
  readonly used: string;
}

export function marginWords(kind: MarginKind, margins: Margins, units: Units): MarginWords | null {
  const margin = margins[kind];
  if (!margin) return null;
  const { left, used, limit } = margin;
  switch (kind) {
    case 'cord':
      return {
        left: spareOrShort(left, units),
        used: Number.isFinite(used) ? `${nearestInch(used, units)} of ${nearestInch(limit, units)}` : '',
      };
    case 'branch':
      return {
        left: left < 0 ? `${leftLength(left, units)} too long` : `${nearestInch(left, units)} spare`,
        used: `${nearestInch(used, units)} of ${nearestInch(limit, units)}`,
      };
    case 'volts':
      return {
        left: left < 0 ? `${(-left).toFixed(2)} % over` : `${left.toFixed(2)} % spare`,
        used: `${used.toFixed(2)} of ${limit} %`,
      };
  }
}
