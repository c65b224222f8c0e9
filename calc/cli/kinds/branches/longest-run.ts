import * as v from 'valibot';
import { longestRun } from '../../../circuits/longest-run.ts';
import { finite, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';
import { dropInput, lackingFor } from './drop-input.ts';

const limitPercent = v.pipe(finite, v.gtValue(0), v.maxValue(100));

export const longestRunKind = kind(dropInput({ limitPercent }), (input, tell) => {
  const lacking = lackingFor(input.conductor, input);
  if (lacking !== undefined) return refuse('conductor.size', lacking);
  const length = longestRun(TABLES, input, tell);
  return length === null ? refuse('limitPercent', 'no length drops the volts so far') : answer({ length });
});
