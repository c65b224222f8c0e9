import { expect, test } from 'vitest';
import { changedRules } from '../../../calc/findings/changed-rules.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules.ts';

test('a site by the default rules has nothing said of its rules', () => {
  expect(changedRules(DEFAULT_RULES)).toEqual([]);
});

test('each limit that is set otherwise is named with its default', () => {
  const [finding] = changedRules({
    ...DEFAULT_RULES,
    cordLimit: 30,
    allowance: { ...DEFAULT_RULES.allowance, box: 2 },
  });
  expect(finding?.severity).toBe('note');
  expect(finding?.says).toContain('cordLimit 30 (25)');
  expect(finding?.says).toContain('allowance.box 2 (1)');
});

test('what a site is built of is no limit', () => {
  expect(changedRules({ ...DEFAULT_RULES, metal: 'aluminum', vehicle: 'pickup' })).toEqual([]);
});
