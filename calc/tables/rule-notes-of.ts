import { kept } from '../../routing/kept/kept.ts';
import { RULE_NOTES, type RuleNote } from '../../routing/site/rules/rule-notes.ts';
import type { CodeTables } from './code-tables.ts';

/** Every rule of a site as `RULE_NOTES` has it, and of those that the code sets where this edition does. */
export const ruleNotesOf = kept(({ ruleBases }: CodeTables): readonly RuleNote[] =>
  RULE_NOTES.map((note) => ({ ...note, ...ruleBases[note.path] })),
);
