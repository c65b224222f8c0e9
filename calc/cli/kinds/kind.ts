import * as v from 'valibot';
import { placeOf } from '../../../routing/site/file/place.ts';
import type { Tell } from '../../words/explain.ts';

export interface InputError {
  /** Such as `conductor.size`; empty for the input as a whole. */
  readonly place: string;
  readonly says: string;
}

export type KindResult =
  | { readonly ok: true; readonly value: object }
  | { readonly ok: false; readonly errors: readonly InputError[] };

/** One calculation: reads one JSON value strictly and answers, or says what is wrong and where. */
export type CalcKind = (input: unknown, tell: Tell) => KindResult;

export const answer = (value: object): KindResult => ({ ok: true, value });

export const refuse = (place: string, says: string): KindResult => ({ ok: false, errors: [{ place, says }] });

/** A kind from the schema of its input and the work to do on what the schema lets through. */
export function kind<Schema extends v.GenericSchema>(
  schema: Schema,
  work: (input: v.InferOutput<Schema>, tell: Tell) => KindResult,
): CalcKind {
  return (input, tell) => {
    const read = v.safeParse(schema, input);
    if (!read.success) return { ok: false, errors: read.issues.map(errorOf) };
    const result = work(read.output, tell);
    return result.ok && !allFinite(result.value) ? refuse('', 'the numbers are too large to work with') : result;
  };
}

function errorOf(issue: v.BaseIssue<unknown>): InputError {
  const place = placeOf((issue.path ?? []).map(({ key }) => (typeof key === 'number' ? key : String(key))));
  if (issue.expected === 'never') return { place, says: 'unknown field' };
  if (issue.received === 'undefined' && issue.type === 'strict_object') return { place, says: 'missing' };
  if (issue.expected === null) return { place, says: issue.message };
  const expected = `expected ${issue.expected}`;
  return {
    place,
    says: issue.received === 'undefined' ? `missing: ${expected}` : `${expected}, got ${issue.received}`,
  };
}

const allFinite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(allFinite);
