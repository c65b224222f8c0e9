/** Candidates beyond this are not searched: a suggestion is a kindness, not worth a wait. */
const MAX_CANDIDATES = 300;
const MAX_WORD = 40;

/** `; did you mean "width"?` where one of the words is a slip of the pen away, else ''. */
export function didYouMean(word: string, words: Iterable<string>): string {
  if (word.length > MAX_WORD) return '';
  let best: string | null = null;
  let least = word.length > 5 ? 2.5 : 1.5;
  let seen = 0;
  for (const candidate of words) {
    if (++seen > MAX_CANDIDATES) return '';
    if (Math.abs(candidate.length - word.length) >= least) continue;
    const slips = editDistance(word.toLowerCase(), candidate.toLowerCase()) + (word === candidate ? 1 : 0.1);
    if (slips < least && word !== candidate) [best, least] = [candidate, slips];
  }
  return best === null ? '' : `; did you mean ${JSON.stringify(best)}?`;
}

/** Fewest letters added, left out, changed, or two side by side swapped, to turn one word into the other (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let above: readonly number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwap ? (above[j - 2] ?? 0) + 1 : Infinity;
      next.push(Math.min(change, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    above = row;
    row = next;
  }
  return row[b.length] ?? 0;
}

/** `; did you mean "D07"?` where an id differs from one of these only in case, marks or leading zeros, else ''. */
export function didYouMeanId(id: string, ids: Iterable<string>): string {
  const bones = bonesOf(id);
  if (bones === '') return '';
  for (const candidate of ids) if (bonesOf(candidate) === bones) return `; did you mean ${JSON.stringify(candidate)}?`;
  return '';
}

const bonesOf = (id: string): string =>
  id
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
    .replace(/(^|[a-z])0+(?=\d)/g, '$1');
