import { RULE_WORDS, type RuleWord } from '../../routing/site/rules/rule-words.ts';
import type { Rule } from './looked.ts';
import { BRANCH_RULES } from './rules/branch-rules.ts';
import { LOT_RULES } from './rules/lot-rules.ts';
import { SITE_RULES } from './rules/site-rules.ts';
import { SUPPLY_RULES } from './rules/supply-rules.ts';

/** The planner's closed list of checks; one that is missing here does not compile. */
export const RULES: Readonly<Record<RuleWord, Rule>> = {
  ...LOT_RULES,
  ...BRANCH_RULES,
  ...SUPPLY_RULES,
  ...SITE_RULES,
};

/** The same in the order in which they are told. */
export const RULE_LIST: readonly (Rule & { readonly rule: RuleWord })[] = RULE_WORDS.map((rule) => ({
  rule,
  ...RULES[rule],
}));
