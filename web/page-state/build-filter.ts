/** Which drops the list of the field shows. */
export interface BuildFilter {
  /** Part of the name of a drop, of its chargers or of their stalls. */
  readonly find: string;
  readonly notDone: boolean;
  readonly offDrawing: boolean;
}

export const ALL_DROPS: BuildFilter = { find: '', notDone: false, offDrawing: false };
