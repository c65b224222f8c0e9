/** What the hand is drawn to, in the order of its keys: Alt+1 switches the first off and on. */
export const SNAP_KINDS = [
  'ends',
  'middles',
  'crossings',
  'perpendiculars',
  'gridlines',
  'members',
  'right angles',
  'alignment',
  'grid',
] as const;
export type SnapKind = (typeof SNAP_KINDS)[number];

export const SNAP_WORDS: Readonly<Record<SnapKind, string>> = {
  ends: 'ends and corners',
  middles: 'middles',
  crossings: 'crossings',
  perpendiculars: 'perpendiculars',
  gridlines: 'gridlines',
  members: 'raceways and members',
  'right angles': 'right angles',
  alignment: 'alignment with others',
  grid: 'the grid of 3" (0.1 m)',
};
