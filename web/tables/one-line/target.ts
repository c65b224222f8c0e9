import type { Lines } from '../../../routing/site/schema/vocabulary.ts';

/** A place where chargers can be put: equipment, and lines of it. */
export interface Target {
  readonly panel: string;
  readonly lines?: Lines;
}

export const sameTarget = (a: Target | null, b: Target | null): boolean =>
  a?.panel === b?.panel && a?.lines === b?.lines;

export const targetWords = ({ panel, lines }: Target): string => (lines === undefined ? panel : `${lines} of ${panel}`);

/** The place that something on the one-line belongs to. */
export function targetOf(element: Element | null): Target | null {
  const panel = element?.closest<HTMLElement>('[data-panel]')?.dataset.panel;
  if (panel === undefined) return null;
  const lines = element?.closest<HTMLElement>('[data-lines]')?.dataset.lines as Lines | undefined;
  return lines === undefined ? { panel } : { panel, lines };
}
