import type { Finding } from '../../routing/site/finding.ts';
import { DEFAULT_RULES } from '../../routing/site/rules.ts';
import type { Rules } from '../../routing/site/site.ts';
import { remembered } from '../memo.ts';

/** Path and value of every rule, such as `allowance.box`. */
function* rulesIn(value: unknown, path = ''): Generator<readonly [path: string, value: string]> {
  if (typeof value === 'object' && value !== null)
    for (const [name, inner] of Object.entries(value)) yield* rulesIn(inner, path === '' ? name : `${path}.${name}`);
  else yield [path, String(value)];
}

const DEFAULTS: ReadonlyMap<string, string> = new Map(rulesIn(DEFAULT_RULES));

/** Rules that say what is there, not how far it may go. */
const NO_LIMITS: ReadonlySet<string> = new Set(['vehicle', 'metal', 'insulation']);

/** A note that names every limit and allowance which the site sets otherwise than by default; nothing where it sets none. */
export const changedRules = remembered((rules: Rules): readonly Finding[] => {
  const changed = [...rulesIn(rules)].filter(([path, value]) => !NO_LIMITS.has(path) && DEFAULTS.get(path) !== value);
  if (changed.length === 0) return [];
  const words = changed.map(([path, value]) => `${path} ${value} (${DEFAULTS.get(path) ?? 'none'})`).join(', ');
  return [
    {
      severity: 'note',
      rule: 'rules-changed',
      about: [],
      says: `The site sets rules otherwise than by default (default in brackets; lengths in feet): ${words}.`,
      source: 'rules of the site',
    },
  ];
});
