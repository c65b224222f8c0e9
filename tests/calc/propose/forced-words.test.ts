import { expect, test } from 'vitest';
import { forcedWords } from '../../../calc/propose/forced-words.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

const SITE: SiteFile = {
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'lot',
  columns: [{ id: 'C1', at: [0, 0], size: [1, 1] }],
};
const fails = (rule: Finding['rule'], about: readonly string[]): Finding => ({
  severity: 'fail',
  rule,
  about,
  says: `${rule} of ${about.join()}.`,
  source: '',
});

test('only what is known to force a finding is said to: the rest is left, not forced', () => {
  expect(forcedWords(SITE, [], [fails('bends', ['R7'])])).toEqual([
    'Left in the best way that was found: bends of R7.',
  ]);
  expect(forcedWords(SITE, [], [fails('bends', ['R7', 'C1'])])).toEqual([
    'Forced: C1 stands as drawn. bends of R7,C1.',
  ]);
  expect(forcedWords(SITE, [], [fails('no-run', ['EV1']), fails('no-run', ['EV2'])])).toEqual([
    'Left in the best way that was found: no-run of EV1. (and 1 more of the kind)',
  ]);
});

const blocked = (blocks: NonNullable<SiteFile['keepouts']>[number]['blocks']): SiteFile => ({
  ...SITE,
  keepouts: [
    {
      id: 'K1',
      outline: [
        [0, 0],
        [9, 0],
        [9, 9],
      ],
      blocks,
    },
  ],
});
const steel: SiteFile = { ...SITE, members: [{ id: 'B1', from: [0, 0, 12], to: [9, 0, 12] }] };
const source = (faultAmps?: number): SiteFile => ({
  ...SITE,
  equipment: [
    {
      id: 'SE',
      kind: 'source',
      at: [0, 0],
      size: [4, 2, 7],
      entry: [0, 0, 2],
      ...(faultAmps !== undefined && { faultAmps }),
    },
  ],
});

// Each on a site where what it says was looked at, and on one where it would be untrue.
test.each<readonly [rule: Finding['rule'], about: string, is: SiteFile, not: SiteFile, says: RegExp]>([
  ['no-run', 'EV1', blocked(['raceway']), blocked(['drop']), /along the lines that were looked at, which keep-outs/],
  ['unsupported', 'R1', steel, SITE, /of the lines that were looked at none/],
  ['interrupting-rating', 'P1', source(22_000), source(), /as it was entered/],
  ['main-overload', 'SE', source(), SITE, /^Forced: SE stands with a rating of less than is asked of it/],
  ['transformer-overload', 'SE', source(), SITE, /SE stands with a rating/],
  ['spaces-short', 'SE', source(), SITE, /SE stands with no more spaces than it has/],
])('%s is said to be forced only where the site has what forces it', (rule, about, is, not, says) => {
  expect(forcedWords(is, [], [fails(rule, [about])])[0]).toMatch(says);
  expect(forcedWords(not, [], [fails(rule, [about])])).toEqual([
    `Left in the best way that was found: ${rule} of ${about}.`,
  ]);
});

test('a branch that is too long is left, not forced: whether a nearer panel could be had is not known', () => {
  for (const rule of ['branch-limit', 'branch-drop'] as const)
    expect(forcedWords(source(), [], [fails(rule, ['EV1', 'SE'])])[0]).toMatch(/^Left in the best way/);
});

test('drop that is too much is laid to what stands where that was not changed, else to what was looked at', () => {
  expect(forcedWords(source(), [], [fails('total-drop', ['EV1', 'SE'])])[0]).toContain('SE stands as drawn');
  expect(forcedWords(SITE, [], [fails('total-drop', ['EV1', 'P1'])])[0]).toContain('another source was not looked at');
});

test('what failed before the proposal is none of it', () => {
  expect(forcedWords(SITE, [fails('bends', ['R1'])], [fails('bends', ['R1'])])).toEqual([]);
});
