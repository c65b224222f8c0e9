import { kept } from '../../routing/kept/kept.ts';
import { conflictsOf, type Register } from '../../routing/site/records/registers.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Mark } from '../../routing/site/site.ts';

/** Where two people wrote different things of one thing in the field, and nobody has decided between them yet. */
export const recordConflicts = kept((records: readonly Mark[]): readonly Finding[] =>
  conflictsOf(records).map(finding),
);

function finding({ of, part, what, heads, now }: Register): Finding {
  const who = [...new Set(heads.map(whoWords))];
  const thing = what === 'photo' || part === undefined ? what : `${part}, ${what}`;
  return {
    severity: 'warn',
    rule: 'records-conflict',
    about: [of],
    says: `${of} (${thing}): ${who.join(' and ')} wrote different things down without knowing of each other. ${now === null ? 'That it was taken back' : `What ${whoWords(now)} wrote`} holds until somebody decides: Build, Records.`,
    value: heads.length,
    limit: 1,
    unit: 'records',
    source: 'records of the field',
  };
}

/** "JB, 2026-05-31". */
export const whoWords = ({ by, on }: Pick<Mark, 'by' | 'on'>): string =>
  [by || 'somebody without initials', on].filter(Boolean).join(', ');
