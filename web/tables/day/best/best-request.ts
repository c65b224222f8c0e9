import type { DayInput } from '../../../../calc/day/day-input.ts';

export interface BestRequest {
  readonly input: DayInput;
  /** The limit whose least figure is looked for. */
  readonly limit: string | null;
}

/** What the best schedule gives, and the least figures of the limit with which all get what their cords could give. */
export interface Best {
  readonly energy: number;
  readonly energyBound: number;
  /** Of any schedule. */
  readonly ceiling: number | null;
  /** Of each rule. */
  readonly ceilings: Readonly<Record<string, number | null>>;
  readonly relaxed: readonly string[];
  /** Of the best schedule, in each step: the fullest row of the limit, and kilowatts. */
  readonly load: readonly number[];
  readonly kw: readonly number[];
}

export type BestNews =
  | { readonly kind: 'doing'; readonly what: string; readonly round: number; readonly gap: number }
  | { readonly kind: 'done'; readonly best: Best }
  | { readonly kind: 'failed'; readonly says: string };
