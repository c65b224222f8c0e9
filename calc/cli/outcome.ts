/** What a verb gives back: what to print where, and the exit status (0 done, 1 findings that fail, 2 wrong input). */
export interface VerbOutcome {
  readonly status: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

export const done = (out: string): VerbOutcome => ({ status: 0, out, err: '' });

/** The input or the words are wrong: the reason on standard error and nothing on standard output. */
export const wrong = (reason: string): VerbOutcome => ({ status: 2, out: '', err: `${reason.trimEnd()}\n` });

/** Some of the input is wrong and the rest was done all the same, as was asked: the reason, what was done, status 2. */
export const partly = (out: string, reason: string): VerbOutcome => ({ status: 2, out, err: `${reason.trimEnd()}\n` });
