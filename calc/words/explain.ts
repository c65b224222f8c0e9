/** One step of a calculation, for a person who checks it. */
export interface Step {
  /** What is found, such as "ambient factor". */
  readonly find: string;
  /** The formula or look-up in words. */
  readonly formula: string;
  /** The values that went in, by name, each with its unit in the text. */
  readonly values: Readonly<Record<string, string | number>>;
  readonly result: string | number;
  readonly unit?: string;
  /** Code section, table, handbook, or "common practice, no source". */
  readonly source: string;
}

/** Hears the steps of a calculation. Takes a thunk so that a silent calculation builds no text. */
export type Tell = (step: () => Step) => void;

/** Listens to nothing: for the pipeline's inner loops. */
export const SILENT: Tell = () => {};

/**
 * Runs `work` and returns its result with the steps it told.
 * @example
 * // By definition: one step, of no change of length at one temperature
 * explained((tell) => expansion(NEC, { material: 'PVC', length: 100, temperatureRangeC: 0 }, tell)).steps[0].find // 'change of length'
 */
export function explained<T>(work: (tell: Tell) => T): { readonly result: T; readonly steps: readonly Step[] } {
  const steps: Step[] = [];
  const result = work((step) => {
    steps.push(step());
  });
  return { result, steps };
}
