import { expect, test } from 'vitest';
import { changedRules } from '../../../calc/checks/changed-rules.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';

test('a site by the default rules has nothing said of its rules', () => {
  expect(changedRules(DEFAULT_RULES, 'ft')).toEqual([]);
});

test('each limit that is set otherwise is named with its default', () => {
  const [finding] = changedRules(
    {
      ...DEFAULT_RULES,
      cordLimit: 30,
      allowance: { ...DEFAULT_RULES.allowance, box: 2 },
      ambientC: 35,
      waste: { ...DEFAULT_RULES.waste, conductor: 0.08 },
    },
    'ft',
  );
  expect(finding?.severity).toBe('note');
  expect(finding?.says).toContain('longest cord 30\' 0" (usually 25\' 0")');
  expect(finding?.says).toContain('make-up at the box 2\' 0" (usually 1\' 0")');
  expect(finding?.says).toContain('ambient temperature 35 °C (95 °F) (usually 40 °C (104 °F))');
  expect(finding?.says).toContain('conductor waste 8% (usually 5%)');
});

test('what a site is built of is no limit', () => {
  expect(changedRules({ ...DEFAULT_RULES, metal: 'aluminum', vehicle: 'pickup' }, 'ft')).toEqual([]);
});
