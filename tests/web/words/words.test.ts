import { expect, test } from 'vitest';
import { RULES } from '../../../calc/checks/rules.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { findingGroups } from '../../../web/words/finding-groups.ts';
import { leftLength, nearestInch, spareOrShort } from '../../../web/words/lengths.ts';
import { marginWords } from '../../../web/words/margins.ts';
import { quantityWords } from '../../../web/words/quantities.ts';

const finding = (severity: Finding['severity'], rule: Finding['rule'], id: string): Finding => ({
  severity,
  rule,
  about: [id],
  says: `${id} says`,
  source: 'a rule',
});

test('twelve drops short by the same fault are one group with twelve places, and what fails comes first', () => {
  const short = Array.from({ length: 12 }, (_, i) => finding('fail', 'reach', `EV${i}`));
  const groups = findingGroups([finding('note', 'sound', 'x'), finding('warn', 'low-cord', 'EV1'), ...short]);
  expect(groups.map(({ severity, findings }) => [severity, findings.length])).toEqual([
    ['fail', 12],
    ['warn', 1],
    ['note', 1],
  ]);
});

test('a rule at two severities is two groups', () => {
  expect(findingGroups([finding('fail', 'reach', 'a'), finding('warn', 'reach', 'b')])).toHaveLength(2);
});

test('several findings of one rule are headed in the words of the list of rules', () => {
  expect(findingGroups([finding('warn', 'fault-current', 'a')])[0]?.heading).toBe(RULES['fault-current'].title);
});

test.each([
  [19 + 2 / 12, 'ft', `19' 2"`],
  [10, 'm', '3.05 m'],
] as const)('%d ft in %s is %s', (feet, units, words) => {
  expect(nearestInch(feet, units)).toBe(words);
});

test('a sixteenth short is never said to be nothing', () => {
  expect(leftLength(-1 / 192, 'ft')).toBe(`0' 0 1/16"`);
  expect(spareOrShort(-1 / 192, 'ft')).toContain('short');
  expect(spareOrShort(0, 'ft')).toBe('none spare');
});

test('a cord without a way to the inlet says so', () => {
  expect(spareOrShort(Number.NEGATIVE_INFINITY, 'ft')).toBe('no way there');
});

test('margins say what is left and of what, in the unit that cures them', () => {
  const margins = {
    charger: 'EV1',
    cord: { left: -4 / 3, used: 24 + 1 / 3, limit: 23, stall: 'S1', direction: 'nose-in', inlet: 'front' },
    branch: { left: -38, used: 288, limit: 250 },
    volts: { of: 'branch', left: 0.6, used: 2.4, limit: 3 },
  } as const;
  expect(marginWords('cord', margins, 'ft')?.left).toBe(`1' 4" short`);
  expect(marginWords('branch', margins, 'ft')).toMatchObject({ left: `38' 0" too long`, limit: `of 250' 0"` });
  expect(marginWords('volts', margins, 'ft')).toMatchObject({ left: '0.60% spare', limit: 'of 3%' });
  const total = { ...margins, volts: { of: 'total', left: 0.3, used: 4.7, limit: 5 } } as const;
  expect(marginWords('volts', total, 'ft')).toMatchObject({ limit: 'of 5% in all' });
  expect(marginWords('volts', { ...margins, volts: null }, 'ft')).toBeNull();
});

test('lengths are counted in the units of the site, pieces as they are', () => {
  expect(quantityWords(1000, 'ft', 'ft')).toBe('1,000 ft');
  expect(quantityWords(1000, 'ft', 'm')).toBe('304.8 m');
  expect(quantityWords(12, 'each', 'm')).toBe('12 each');
});
