import { addTo } from '../../routing/lists/grouping.ts';
import { ELEMENT_LISTS } from '../../routing/site/kinds/kinds.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { RuleWord } from '../../routing/site/rules/rule-words.ts';
import type { SiteFile } from '../../routing/site/site.ts';

const OVERLOADED =
  'what stands ahead is rated for less than all chargers at full rate ask for; load management holds them lower, or something larger';

/** What of a site leaves a proposal no way round a failing finding. Planning tips of our own. */
const FORCES: Partial<Readonly<Record<RuleWord, string>>> = {
  unsupported: 'no steel is drawn that holds every way to it; draw the canopy, strut or stringer that would',
  'total-drop':
    'what feeds the lot is so far off that neither wider feeders nor larger transformers of the tables hold the drop; a source of higher voltage, or one nearer by, would',
  'branch-limit': 'no place is free for a panel nearer by',
  'branch-drop': 'no place is free for a panel nearer by',
  'feeder-overload': OVERLOADED,
  'main-overload': OVERLOADED,
  'bus-overload': OVERLOADED,
  'unit-load': OVERLOADED,
  'service-load': OVERLOADED,
  'transformer-overload': OVERLOADED,
  'no-run': 'keep-outs that block raceways close every way',
  'spaces-short': 'the panel that stands has no more spaces',
  'interrupting-rating': 'the fault current of the source is as it was entered',
};

const keyOf = ({ rule, about }: Finding): string => `${rule}\n${[...about].sort().join('\n')}`;

export const failsOf = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ severity }) => severity === 'fail');

/**
 * The failing findings that a proposal brings with it, each kind with what of the site forces it, where that is known: ways
 * that fail less were taken before any that fails more.
 * @param file the site before
 */
export function forcedWords(file: SiteFile, before: readonly Finding[], after: readonly Finding[]): readonly string[] {
  const had = new Set(failsOf(before).map(keyOf));
  const byRule = new Map<string, Finding[]>();
  for (const one of failsOf(after)) if (!had.has(keyOf(one))) addTo(byRule, one.rule, one);
  const stood = new Set(ELEMENT_LISTS.flatMap((list) => (file[list] ?? []).map(({ id }) => id)));
  return [...byRule.values()].map((own) => {
    const [first] = own as [Finding, ...Finding[]];
    const drawn = [...new Set(own.flatMap(({ about }) => about.filter((id) => stood.has(id))))].slice(0, MOST_NAMED);
    const why =
      FORCES[first.rule as RuleWord] ??
      (drawn.length > 0 ? `${drawn.join(', ')} ${drawn.length === 1 ? 'stands' : 'stand'} as drawn` : null);
    const more = own.length > 1 ? ` (and ${own.length - 1} more of the kind)` : '';
    // What forces it is not known: another way might be without it.
    return why === null
      ? `Left in the best way that was found: ${first.says}${more}`
      : `Forced: ${why}. ${first.says}${more}`;
  });
}

/** So many that stand are named. */
const MOST_NAMED = 4;
