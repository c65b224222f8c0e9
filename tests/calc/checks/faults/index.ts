import type { RuleWord } from '../../../../routing/site/rules/rule-words.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { BRANCH_FAULTS } from './branch-faults.ts';
import { LOT_FAULTS } from './lot-faults.ts';
import { lotWith } from './small-lot.ts';
import { SUPPLY_FAULTS } from './supply-faults.ts';

/** A small site with the fault of each check; a check without one does not compile. */
export const FAULTS: Readonly<Record<RuleWord, SiteFile>> = {
  ...LOT_FAULTS,
  ...BRANCH_FAULTS,
  ...SUPPLY_FAULTS,
  'as-built': lotWith({ asBuilt: { D1: { box: [9, 12, 11] } } }),
  'rules-changed': lotWith({ rules: { branchLimit: 200 } }),
  'code-edition': lotWith({ rules: { code: 'NEC 1776' } }),
};
