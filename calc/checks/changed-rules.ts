import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import { changedNotes, ruleAt, ruleWords } from '../../routing/site/rules/rule-value.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../routing/site/site.ts';

/** Rules that say what is there, not how far it may go. */
const NO_LIMITS: ReadonlySet<string> = new Set(['vehicle', 'metal', 'insulation']);

/** A note that names every limit and allowance which the site sets otherwise than by default; nothing where it sets none. */
export const changedRules = kept((rules: Rules, units: Units): readonly Finding[] => {
  const changed = changedNotes(rules).filter(({ path }) => !NO_LIMITS.has(path));
  if (changed.length === 0) return [];
  const words = changed.map(
    (note) =>
      `${note.name} ${ruleWords(note, ruleAt(rules, note.path), units)} (usually ${ruleWords(note, note.default, units)})`,
  );
  return [
    {
      severity: 'note',
      rule: 'rules-changed',
      about: [],
      says: `Rules that this site sets otherwise than usual: ${words.join('; ')}.`,
      source: 'rules of the site',
    },
  ];
});
