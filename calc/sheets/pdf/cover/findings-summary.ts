import { type Finding, SEVERITIES, type Severity } from '../../../../routing/site/finding.ts';
import type { Table } from '../table.ts';

const WORDS: Readonly<Record<Severity, string>> = { fail: 'fails', warn: 'look at', note: 'note' };
/** Places of one matter that are listed by id. */
const MOST_PLACES = 14;

/** What the plan has to say of the site, in its order: one row a matter, with one sentence of it and all its places. */
export function findingsSummary(findings: readonly Finding[], width: number): Table {
  const counts = SEVERITIES.map((severity) => findings.filter((finding) => finding.severity === severity).length);
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = `${finding.severity} ${finding.rule}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return {
    short: 'findings',
    title: 'Findings',
    width,
    lead: [
      `${counts[0]} fail, ${counts[1]} are worth a look, ${counts[2]} ${counts[2] === 1 ? 'is a note' : 'are notes'}.`,
    ],
    columns: [{ head: '' }, { head: 'No.', align: 'right' }, { head: 'What, where, and by which rule' }],
    rows: [...groups.values()].map((group) => {
      const [first] = group as [Finding, ...Finding[]];
      const others = group.slice(1).map(({ about }) => about[0] ?? '');
      const more =
        others.length === 0
          ? ''
          : ` Likewise ${others.slice(0, MOST_PLACES).join(', ')}${others.length > MOST_PLACES ? ` and ${others.length - MOST_PLACES} more` : ''}.`;
      return [WORDS[first.severity], String(group.length), `${first.says}${more} (${first.source})`];
    }),
  };
}
