import { RULE_NOTES, type RuleNote } from '../../routing/site/rule-notes.ts';
import { remembered } from '../kept/memo.ts';
import type { CodeTables } from './code-tables.ts';

/** Every rule of a site as `RULE_NOTES` has it, and of those that the code sets where this edition does. */
export const ruleNotesOf = remembered(({ ruleBases }: CodeTables): readonly RuleNote[] =>
  RULE_NOTES.map((note) => ({ ...note, ...ruleBases[note.path] })),
);
