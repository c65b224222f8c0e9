import { didYouMean } from '../../../routing/site/file/nearest-word.ts';
import { explained, SILENT } from '../../words/explain.ts';
import { CALC_KINDS, SOLVED_KINDS } from '../kinds/index.ts';
import type { CalcKind } from '../kinds/kind.ts';
import type { Machine } from '../machine.ts';
import { done, partly, type VerbOutcome, wrong } from '../outcome.ts';
import { fewAlike } from '../words/few-alike.ts';

export interface CalcOptions {
  readonly explain: boolean;
  /** A line that is wrong has a line out of its own, `{"errors": [...]}`, and the others are worked. */
  readonly keepGoing: boolean;
}

/** `calc KIND`: one JSON object a line in, one a line out; with `explain` each carries its `steps`. */
export async function calcVerb(words: readonly string[], options: CalcOptions, machine: Machine): Promise<VerbOutcome> {
  const [kind, ...rest] = words;
  const kinds = `the kinds are ${[...CALC_KINDS.keys(), ...SOLVED_KINDS.keys()].join(', ')}`;
  if (kind === undefined) return wrong(`calc: name a kind; ${kinds}`);
  if (rest.length > 0) return wrong(`calc: one kind at a time; "${rest.join(' ')}" is more than that`);
  const calculate = CALC_KINDS.get(kind) ?? SOLVED_KINDS.get(kind)?.(await machine.solver());
  if (!calculate)
    return wrong(
      `calc: there is no kind "${kind}"; ${kinds}${didYouMean(kind, [...CALC_KINDS.keys(), ...SOLVED_KINDS.keys()])}`,
    );
  let text: string;
  try {
    text = machine.input();
  } catch (error) {
    return wrong(`calc: standard input cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  const printed: string[] = [];
  const reasons: string[] = [];
  text.split('\n').forEach((line, i) => {
    if (line.trim() === '') return;
    const answer = answered(line, calculate, options.explain);
    if (answer.ok) printed.push(answer.line);
    else {
      for (const says of answer.errors) reasons.push(`line ${i + 1}: ${says}`);
      printed.push(JSON.stringify({ errors: answer.errors }));
    }
  });
  if (reasons.length === 0) return done(lined(printed));
  const told = fewAlike(reasons).join('\n');
  return options.keepGoing ? partly(lined(printed), told) : wrong(told);
}

const lined = (lines: readonly string[]): string => lines.map((line) => `${line}\n`).join('');

function answered(
  line: string,
  calculate: CalcKind,
  explain: boolean,
): { readonly ok: true; readonly line: string } | { readonly ok: false; readonly errors: readonly string[] } {
  let input: unknown;
  try {
    input = JSON.parse(line);
  } catch (error) {
    return { ok: false, errors: [`not JSON: ${error instanceof Error ? error.message : String(error)}`] };
  }
  const { result, steps } = explain
    ? explained((tell) => calculate(input, tell))
    : { result: calculate(input, SILENT), steps: [] };
  if (!result.ok)
    return { ok: false, errors: result.errors.map(({ place, says }) => `${place ? `${place}: ` : ''}${says}`) };
  return { ok: true, line: JSON.stringify(explain ? { ...result.value, steps } : result.value) };
}
