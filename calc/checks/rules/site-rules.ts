import { RULE_NOTES } from '../../../routing/site/rules/rule-notes.ts';
import type { Rule } from '../looked.ts';

/** What was measured on the site, and the rules that it sets for itself, which are there whatever is drawn. */
export const SITE_RULES = {
  'as-built': {
    title: 'Built off the drawing',
    source: 'measured on the site',
    lookedAt: ({ site }) => site.asBuilt.size,
  },
  'records-conflict': {
    title: 'Two records that say different things',
    source: 'records of the field',
    lookedAt: ({ site }) => site.records.length,
  },
  'rules-changed': {
    title: 'Rules of this site that differ from the usual',
    source: 'rules of the site',
    lookedAt: () => RULE_NOTES.length,
  },
  'code-edition': {
    title: 'Code edition whose tables are not held',
    source: 'rules of the site',
    lookedAt: () => 1,
    withholds: 'the tables of the code edition asked for are not held',
  },
} as const satisfies Readonly<Record<string, Rule>>;
