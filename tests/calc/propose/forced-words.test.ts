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
    'Forced: keep-outs that block raceways close every way. no-run of EV1. (and 1 more of the kind)',
  ]);
});

test('what failed before the proposal is none of it', () => {
  expect(forcedWords(SITE, [fails('bends', ['R1'])], [fails('bends', ['R1'])])).toEqual([]);
});
