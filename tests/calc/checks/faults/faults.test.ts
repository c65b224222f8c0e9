import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import type { Plan } from '../../../../calc/plan/plan-shape.ts';
import { RULE_WORDS, type RuleWord } from '../../../../routing/site/rules/rule-words.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { FAULTS } from './index.ts';
import { SMALL_LOT } from './small-lot.ts';

const planOf = (file: SiteFile): Plan => plan(toSite(file));

const EMPTY: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'empty' };

/** Checks of what a site says for itself, which are made whatever is drawn. */
const ALWAYS: ReadonlySet<RuleWord> = new Set(['rules-changed', 'code-edition']);

describe.each(RULE_WORDS)('the check %s', (rule) => {
  test('finds its fault, and was applied to something there', () => {
    const { findings, checks } = planOf(FAULTS[rule]);
    expect(findings.map((finding) => finding.rule)).toContain(rule);
    const check = checks.find((one) => one.rule === rule)!;
    expect(check.lookedAt).toBeGreaterThan(0);
    expect(check.fail + check.warn + check.note).toBe(findings.filter((finding) => finding.rule === rule).length);
  });

  test('has nothing to look at where nothing is drawn', () => {
    const check = planOf(EMPTY).checks.find((one) => one.rule === rule)!;
    expect(check.lookedAt > 0).toBe(ALWAYS.has(rule));
  });
});

test('no fault but of the list is found', () => {
  const words: ReadonlySet<string> = new Set([...RULE_WORDS, 'sound']);
  for (const file of Object.values(FAULTS))
    for (const { rule } of planOf(file).findings) expect(words.has(rule)).toBe(true);
});

test('the lot that the faults are made in has none', () => {
  const { findings } = planOf(SMALL_LOT);
  expect(findings.map(({ rule }) => rule)).toEqual(['sound']);
});
