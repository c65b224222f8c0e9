/** Coefficients of a row of a linear program: `by[j]` of column `at[j]`, their sum between `lower` and `upper`. */
export interface LinearRow {
  readonly lower: number;
  readonly upper: number;
  readonly at: readonly number[];
  readonly by: readonly number[];
}

export interface LinearSolution {
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  readonly columns: Float64Array;
  /** Change of the objective by one more of a row's bound. */
  readonly prices: Float64Array;
}

/** A linear program that grows and is solved again from where it stood: what minimizes the cost of its columns. */
export interface LinearProgram {
  /** Index of the first of the new columns. */
  readonly addColumns: (lower: readonly number[], upper: readonly number[]) => number;
  /** Index of the first of the new rows. */
  readonly addRows: (rows: readonly LinearRow[]) => number;
  /** Frees a row: from now on it bounds nothing. */
  readonly freeRow: (row: number) => void;
  readonly setCosts: (costs: ArrayLike<number>) => void;
  readonly solve: () => LinearSolution;
  readonly dispose: () => void;
}

/** An empty linear program. */
export type NewLinearProgram = () => LinearProgram;
