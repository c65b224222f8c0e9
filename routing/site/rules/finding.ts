import type { RuleWord } from './rule-words.ts';

export const SEVERITIES = ['fail', 'warn', 'note'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** What a severity is called wherever people read it. */
export const GRADES: Readonly<Record<Severity, string>> = { fail: 'Fails', warn: 'Check', note: 'Note' };

/** One thing the plan has to say about the site. Lengths in `value` and `limit` are feet until the plan is written out. */
export interface Finding {
  readonly severity: Severity;
  /** The check that found it; `sound` where it says that none of them failed. */
  readonly rule: RuleWord | 'sound';
  /** Ids of the elements it speaks of, the culprit first. */
  readonly about: readonly string[];
  /** A sentence: what, where, by how much, what would cure it. */
  readonly says: string;
  readonly value?: number;
  readonly limit?: number;
  /** Unit of `value` and `limit`: `ft` is rewritten to the file's units on output. */
  readonly unit?: string;
  /** The rule behind it: a code section, a rule of the site, or "common practice". */
  readonly source: string;
}
