/** One part of a proposal: what was made, how good it is, and what could not be. */
export interface ProposalPart {
  readonly what: 'drops' | 'equipment' | 'raceways';
  /** What it came to, in sentences. */
  readonly says: readonly string[];
  /** What was sought to be least, and the least that is proved possible; null where nothing was sought. */
  readonly measure: {
    readonly of: string;
    readonly value: number;
    readonly bound: number;
    readonly unit: string;
  } | null;
  /** More of the kind: what was sought to be least after that. */
  readonly also?: readonly NonNullable<ProposalPart['measure']>[];
  /** Ids of what was left without, and why. */
  readonly without: readonly { readonly id: string; readonly says: string }[];
}
