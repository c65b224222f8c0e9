import type { Site } from '../../../routing/site/site.ts';

/** What a revision goes by: the mark that its deltas carry, its day, and what it was issued for. */
export interface RevisionIssue {
  readonly mark: string;
  readonly date: string;
  /** Null where the later version has no issue of its own. */
  readonly text: string | null;
}

/** The issues of a later version that an earlier one has not, in their order. */
function ownIssues(before: Site, after: Site): NonNullable<Site['project']['issues']> {
  const known = new Set((before.project.issues ?? []).map((issue) => JSON.stringify(issue)));
  return (after.project.issues ?? []).filter((issue) => !known.has(JSON.stringify(issue)));
}

/**
 * The issue that a revision is: the newest of the later version, where the earlier has not been issued as that already;
 * else the mark that comes next in its history, on the day of the print.
 */
export function revisionIssue(before: Site, after: Site, today: string): RevisionIssue {
  const own = ownIssues(before, after).at(-1);
  if (own !== undefined) return own;
  const marks = (after.project.issues ?? before.project.issues ?? []).map(({ mark }) => mark);
  return { mark: nextMark(marks), date: today, text: null };
}

/** What to say of a revision whose later version was not issued; null where it was. */
export const unissuedWords = ({ mark, date, text }: RevisionIssue): string | null =>
  text === null
    ? `The later version has no issue of its own: its deltas are marked ${mark}, dated ${date}. Add the issue to the project's history to give them its mark and date.`
    : null;

/** B after A, 3 after 2, 1 where nothing was issued; a number that nobody has where the last is of another kind. */
function nextMark(marks: readonly string[]): string {
  const taken = new Set(marks);
  const last = marks.at(-1) ?? '0';
  if (/^[A-Ya-y]$/.test(last)) {
    const next = String.fromCharCode(last.charCodeAt(0) + 1);
    if (!taken.has(next)) return next;
  }
  let number = /^\d{1,6}$/.test(last) ? Number(last) + 1 : marks.length + 1;
  while (taken.has(String(number))) number++;
  return String(number);
}
