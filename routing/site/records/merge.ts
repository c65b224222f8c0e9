import type { Mark } from '../site.ts';

/** A value's text that is the same for equal values, whatever the order of their fields. */
export const canonical = (value: unknown): string =>
  Array.isArray(value)
    ? `[${value.map(canonical).join(',')}]`
    : typeof value === 'object' && value !== null
      ? `{${Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([name, field]) => `${JSON.stringify(name)}:${canonical(field)}`)
          .join(',')}}`
      : JSON.stringify(value);

const texts = new WeakMap<Mark, string>();

/** All that a mark says, as one text: two marks are one where it is the same. */
export function markText(mark: Mark): string {
  let text = texts.get(mark);
  if (text === undefined) {
    text = canonical(mark);
    texts.set(mark, text);
  }
  return text;
}

/** Which of two marks comes first: by logical time, of one time by author, then by what they say. 0 where they are one. */
export function compareMarks(a: Mark, b: Mark): number {
  if (a.time !== b.time) return a.time - b.time;
  if (a.by !== b.by) return a.by < b.by ? -1 : 1;
  if (a.id !== b.id) return a.id < b.id ? -1 : 1;
  const [one, other] = [markText(a), markText(b)];
  return one === other ? 0 : one < other ? -1 : 1;
}

/**
 * All marks of two lists, each once, in their logical time. Nothing is chosen between and nothing is lost, so that it does
 * not matter who merges what with whom, in what order and how often: merging is associative, commutative and idempotent.
 */
export function mergeMarks(a: readonly Mark[], b: readonly Mark[]): readonly Mark[] {
  const all = new Map<string, Mark>();
  for (const mark of [...a, ...b]) if (!all.has(markText(mark))) all.set(markText(mark), mark);
  return [...all.values()].sort(compareMarks);
}

/** The marks of a list that another lacks, in their logical time. */
export function missingFrom(marks: readonly Mark[], known: readonly Mark[]): readonly Mark[] {
  const held = new Set(known.map(markText));
  return mergeMarks(marks, []).filter((mark) => !held.has(markText(mark)));
}

/** The next logical time after all that a list knows of. */
export const nextTime = (marks: readonly Mark[]): number =>
  1 + marks.reduce((most, { time }) => Math.max(most, time), 0);
