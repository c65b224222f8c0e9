import type { Quote } from '../../calc/prices/price-list.ts';

/** A quote of which not all may be filled in yet. */
export type QuoteDraft = Omit<Quote, 'material' | 'validUntil'> & {
  readonly material: number | null;
  readonly validUntil?: string | undefined;
};
