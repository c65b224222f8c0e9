import type { Machine } from './machine.ts';
import type { VerbOutcome } from './outcome.ts';
import { calcVerb } from './verbs/calc.ts';
import { checkVerb } from './verbs/check.ts';
import { compareVerb } from './verbs/compare.ts';
import { dayVerb } from './verbs/day.ts';
import { handoverVerb } from './verbs/handover.ts';
import { issueVerb } from './verbs/issue.ts';
import { mergeVerb } from './verbs/merge.ts';
import { newVerb } from './verbs/new.ts';
import { planVerb } from './verbs/plan.ts';
import { pricesVerb } from './verbs/prices.ts';
import { proposeVerb } from './verbs/propose.ts';
import { schemaVerb } from './verbs/schema.ts';
import { studyVerb } from './verbs/study.ts';
import type { VerbOptions } from './words/option-words.ts';
import { readWords } from './words/read-words.ts';
import type { Verb } from './words/verb-words.ts';

type RunVerb = (words: readonly string[], options: VerbOptions, machine: Machine) => VerbOutcome | Promise<VerbOutcome>;

const RUN: { readonly [verb in Verb]: RunVerb } = {
  plan: planVerb,
  check: checkVerb,
  day: dayVerb,
  compare: compareVerb,
  propose: proposeVerb,
  issue: issueVerb,
  merge: mergeVerb,
  handover: handoverVerb,
  study: studyVerb,
  calc: calcVerb,
  new: newVerb,
  prices: pricesVerb,
  schema: schemaVerb,
};

/** Runs the words of one command. Never throws for what a user can cause. */
export async function runWords(words: readonly string[], loud: Machine): Promise<VerbOutcome> {
  const read = readWords(words);
  if (read.verb === null) return read.outcome;
  const machine = read.options.quiet ? { ...loud, progress: () => {} } : loud;
  return RUN[read.verb](read.rest, read.options, machine);
}
