/** Ohms of one line of a branch, end to end. */
export interface BranchOhms {
  readonly r: number;
  readonly x: number;
}
