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
  'records-conflict': lotWith({
    records: [
      { id: 'a', of: 'D1', part: 'box', what: 'place', by: 'JB', time: 1, place: [9, 9, 11] },
      { id: 'b', of: 'D1', part: 'box', what: 'place', by: 'RL', time: 1, place: [9, 9.1, 11] },
    ],
  }),
  'as-built': lotWith({ asBuilt: { D1: { box: [9, 12, 11] } } }),
  'rules-changed': lotWith({ rules: { branchLimit: 200 } }),
  'code-edition': lotWith({ rules: { code: 'NEC 1776' } }),
};
