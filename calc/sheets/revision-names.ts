/** One file that a revision is written to, by name: what a menu lists without the writers. */
export interface RevisionName {
  readonly ending: RevisionEnding;
  readonly says: string;
  readonly type: string;
  /** Whether it is drawn, and not a table. */
  readonly isDrawn: boolean;
}

export const REVISION_ENDINGS = ['.changes.pdf', '.changes.dxf', '.changes.svg', '.changes.csv'] as const;
export type RevisionEnding = (typeof REVISION_ENDINGS)[number];

export const REVISION_NAMES: readonly RevisionName[] = [
  { ending: '.changes.pdf', says: 'drawing set with clouds', type: 'application/pdf', isDrawn: true },
  { ending: '.changes.dxf', says: 'DXF with clouds', type: 'image/vnd.dxf', isDrawn: true },
  { ending: '.changes.svg', says: 'SVG with clouds', type: 'image/svg+xml', isDrawn: true },
  { ending: '.changes.csv', says: 'change order as CSV', type: 'text/csv', isDrawn: false },
];
