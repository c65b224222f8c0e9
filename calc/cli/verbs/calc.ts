import { explained, SILENT } from '../../explain.ts';
import { KINDS } from '../kinds/index.ts';
import type { Machine } from '../machine.ts';
import { done, type Outcome, wrong } from '../outcome.ts';

/** `calc KIND`: one JSON object a line in, one a line out; with `explain` each carries its `steps`. */
export function calcVerb(words: readonly string[], options: { readonly explain: boolean }, machine: Machine): Outcome {
  const [kind, ...rest] = words;
  const kinds = `the kinds are ${[...KINDS.keys()].join(', ')}`;
  if (kind === undefined) return wrong(`calc: name a kind; ${kinds}`);
  if (rest.length > 0) return wrong(`calc: one kind at a time; "${rest.join(' ')}" is more than that`);
  const calculate = KINDS.get(kind);
  if (!calculate) return wrong(`calc: there is no kind "${kind}"; ${kinds}`);

  const printed: string[] = [];
  const reasons: string[] = [];
  machine
    .input()
    .split('\n')
    .forEach((line, i) => {
      if (line.trim() === '') return;
      let input: unknown;
      try {
        input = JSON.parse(line);
      } catch (error) {
        reasons.push(`line ${i + 1}: not JSON: ${error instanceof Error ? error.message : String(error)}`);
        return;
      }
      const { result: answer, steps } = options.explain
        ? explained((tell) => calculate(input, tell))
        : { result: calculate(input, SILENT), steps: [] };
      if (!answer.ok)
        for (const { place, says } of answer.errors) reasons.push(`line ${i + 1}: ${place ? `${place}: ` : ''}${says}`);
      else printed.push(JSON.stringify(options.explain ? { ...answer.value, steps } : answer.value));
    });
  if (reasons.length > 0) return wrong(reasons.join('\n'));
  return done(printed.map((line) => `${line}\n`).join(''));
}
