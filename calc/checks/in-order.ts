import { keptLists } from '../../routing/kept/kept-list.ts';
import { type Finding, SEVERITIES } from '../../routing/site/rules/finding.ts';

const compareWords = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const compare = (a: Finding, b: Finding): number =>
  SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
  compareWords(a.rule, b.rule) ||
  compareWords(a.about[0] ?? '', b.about[0] ?? '') ||
  compareWords(a.says, b.says) ||
  compareWords(a.about.join(), b.about.join());

/** More changes than this, and all is sorted again. */
const FEW = 64;

/**
 * Findings as a reader takes them: fails, then warnings, then notes; within these by rule, then by the first id, then by
 * what they say. Where few findings come and go, they are put in their places in the last answer.
 */
export const findingsInOrder = (sources: readonly (readonly Finding[])[]): readonly Finding[] => sorted([sources], []);

const sorted = keptLists({
  anew: ([sources]: readonly [readonly (readonly Finding[])[]]): readonly Finding[] =>
    ([] as Finding[]).concat(...sources).sort(compare),
  after: ({ answer: before, lists: [sourcesBefore] }, places, [sources]) => {
    const gone: Finding[] = [];
    const come: Finding[] = [];
    for (const i of places) if (!differ(sourcesBefore[i]!, sources[i]!, gone, come)) return null;
    if (gone.length === 0 && come.length === 0) return before;
    const left = new Set(gone);
    const answer = gone.length === 0 ? [...before] : before.filter((finding) => !left.has(finding));
    for (const finding of come) answer.splice(placeInOrder(answer, finding), 0, finding);
    return answer;
  },
});

/** Adds what two lists have between the same beginning and the same end; false where that is much, or is in both. */
function differ(before: readonly Finding[], after: readonly Finding[], gone: Finding[], come: Finding[]): boolean {
  if (before === after) return true;
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && Object.is(before[head], after[head])) head++;
  let tail = 0;
  while (tail < shorter - head && Object.is(before[before.length - 1 - tail], after[after.length - 1 - tail])) tail++;
  if (before.length + after.length - 2 * (head + tail) > FEW) return false;
  for (let i = head; i < before.length - tail; i++) gone.push(before[i]!);
  for (let i = head; i < after.length - tail; i++) come.push(after[i]!);
  return true;
}

/** Where a finding goes among sorted ones: after all that do not come after it. */
export function placeInOrder(sorted: readonly Finding[], finding: Finding): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(sorted[middle]!, finding) <= 0) low = middle + 1;
    else high = middle;
  }
  return low;
}
