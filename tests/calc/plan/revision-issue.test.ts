import { expect, test } from 'vitest';
import { revisionIssue, unissuedWords } from '../../../calc/plan/compared/revision-issue.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { SMALL } from '../../web/document/small-site.ts';

const A = { mark: 'A', date: '2026-10-01', text: 'for permit' };
const B = { mark: 'B', date: '2026-11-01', text: 'answers to the plan check' };
const issuedAs = (...issues: readonly (typeof A)[]) => toSite({ ...SMALL, project: { ...SMALL.project, issues } });

test('a revision goes by the newest issue of the later version that the earlier was not issued as', () => {
  expect(revisionIssue(issuedAs(A), issuedAs(A, B), '2026-12-01')).toEqual(B);
  expect(revisionIssue(issuedAs(), issuedAs(A, B), '2026-12-01')).toEqual(B);
  expect(unissuedWords(revisionIssue(issuedAs(A), issuedAs(A, B), '2026-12-01'))).toBeNull();
});

test('one that was not issued has the mark that comes next, the day of the print, and says so', () => {
  const next = (...marks: readonly string[]) => {
    const site = issuedAs(...marks.map((mark) => ({ ...A, mark })));
    return revisionIssue(site, site, '2026-12-01');
  };
  expect(next('A')).toEqual({ mark: 'B', date: '2026-12-01', text: null });
  expect(next().mark).toBe('1');
  expect(next('1', '2').mark).toBe('3');
  expect(next('B', 'A').mark).toBe('3');
  expect(next('Rev. A').mark).toBe('2');
  expect(unissuedWords(next('A'))).toContain('marked B, dated 2026-12-01');
});
