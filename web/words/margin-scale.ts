import { MARGIN_KINDS, type MarginKind, type Margins } from '../../calc/plan/margins.ts';

/** Full scale of half a bar, one for each kind and never another, so that bars compare down a column and between lots. */
export const MARGIN_FULL: Readonly<Record<MarginKind, number>> = { cord: 10, branch: 250, volts: 3 };

/** How far a margin's bar goes from its center mark: 1 at full scale, below 0 what is missing; null without a figure. */
export function marginShare(kind: MarginKind, margins: Margins): number | null {
  const margin = margins[kind];
  return margin ? margin.left / MARGIN_FULL[kind] : null;
}

/**
 * The least of a charger's three shares, by which it is found in a list of many. One that lacks a figure has no run or
 * reaches no stall: that is worse than any that is short, and counts as minus infinity.
 */
export function worstShare(margins: Margins): number {
  let worst = Number.POSITIVE_INFINITY;
  for (const kind of MARGIN_KINDS) worst = Math.min(worst, marginShare(kind, margins) ?? Number.NEGATIVE_INFINITY);
  return worst;
}
