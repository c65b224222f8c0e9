import type { Rules } from '../site.ts';
import { CIRCUIT_NOTES } from './rule-notes-circuits.ts';
import { LOT_NOTES } from './rule-notes-lot.ts';
import type { RuleTold } from './rule-told.ts';
import { DEFAULT_RULES } from './rules.ts';

/** The name of one rule: `branchLimit`, `allowance.box`. */
export type RulePath = {
  [K in keyof Rules]: Rules[K] extends object ? `${K}.${keyof Rules[K] & string}` : K;
}[keyof Rules];

export interface RuleNote extends RuleTold {
  readonly path: RulePath;
  readonly default: string | number;
}

const NOTES: Readonly<Record<RulePath, RuleTold>> = { ...LOT_NOTES, ...CIRCUIT_NOTES };

/** Every rule of a group of rules by its path, with its value. */
function* leavesOf(rules: object, path = ''): Generator<readonly [path: string, value: string | number]> {
  for (const [name, value] of Object.entries(rules)) {
    if (typeof value === 'object') yield* leavesOf(value, `${path}${name}.`);
    else yield [`${path}${name}`, value];
  }
}

/** Every rule with its default, its name, its meaning and where the default comes from, in the order of the rules. */
export const RULE_NOTES: readonly RuleNote[] = [...leavesOf(DEFAULT_RULES)].map(([path, value]) => ({
  path: path as RulePath,
  default: value,
  ...NOTES[path as RulePath],
}));

/** A rule as the source of a finding names it: `site rule "longest cord"`. */
export const siteRule = (path: RulePath): string => `site rule "${NOTES[path].name}"`;
