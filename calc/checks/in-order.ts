import { type Finding, SEVERITIES } from '../../routing/site/finding.ts';
import { nextChange } from '../kept/memo.ts';

const compareWords = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const compare = (a: Finding, b: Finding): number =>
  SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
  compareWords(a.rule, b.rule) ||
  compareWords(a.about[0] ?? '', b.about[0] ?? '') ||
  compareWords(a.says, b.says) ||
  compareWords(a.about.join(), b.about.join());

interface Known {
  readonly sources: readonly (readonly Finding[])[];
  readonly sorted: readonly Finding[];
}

/** More changes than this, and all is sorted again. */
const FEW = 64;

const memory = new WeakMap<object, Known>();

/**
 * Findings as a reader takes them: fails, then warnings, then notes; within these by rule, then by the first id, then by
 * what they say. `owner` is what the sources belong to: while it is the same and few findings come and go, they
 * are put in their places in the last answer.
 */
export function inOrder(owner: object, sources: readonly (readonly Finding[])[]): readonly Finding[] {
  const known = memory.get(owner);
  const sorted =
    (known === undefined ? null : amended(known, sources)) ?? ([] as Finding[]).concat(...sources).sort(compare);
  memory.set(owner, { sources, sorted });
  return sorted;
}

function amended(
  { sources: before, sorted }: Known,
  sources: readonly (readonly Finding[])[],
): readonly Finding[] | null {
  if (before.length !== sources.length) return null;
  const gone: Finding[] = [];
  const come: Finding[] = [];
  for (let i = 0; i < sources.length; i++) {
    if (!differ(before[i]!, sources[i]!, gone, come)) return null;
  }
  if (gone.length === 0 && come.length === 0) return sorted;
  const left = new Set(gone);
  const answer = gone.length === 0 ? [...sorted] : sorted.filter((finding) => !left.has(finding));
  for (const finding of come) answer.splice(placeOf(answer, finding), 0, finding);
  return answer;
}

/** Adds what two lists have between the same beginning and the same end; false where that is much, or is in both. */
function differ(before: readonly Finding[], after: readonly Finding[], gone: Finding[], come: Finding[]): boolean {
  if (before === after) return true;
  const shorter = Math.min(before.length, after.length);
  const head = Math.min(shorter, nextChange(before, after, 0));
  let tail = 0;
  while (tail < shorter - head && Object.is(before[before.length - 1 - tail], after[after.length - 1 - tail])) tail++;
  if (before.length + after.length - 2 * (head + tail) > FEW) return false;
  for (let i = head; i < before.length - tail; i++) gone.push(before[i]!);
  for (let i = head; i < after.length - tail; i++) come.push(after[i]!);
  return true;
}

/** Where a finding goes among sorted ones: after all that do not come after it. */
export function placeOf(sorted: readonly Finding[], finding: Finding): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(sorted[middle]!, finding) <= 0) low = middle + 1;
    else high = middle;
  }
  return low;
}
