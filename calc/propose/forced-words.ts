import { addTo } from '../../routing/lists/grouping.ts';
import { ELEMENT_LISTS } from '../../routing/site/kinds/kinds.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { RuleWord } from '../../routing/site/rules/rule-words.ts';
import type { SiteFile } from '../../routing/site/site.ts';

/** Findings of one kind, the site as it was, and those of its elements that the findings are about. */
interface Left {
  readonly file: SiteFile;
  readonly drawn: readonly string[];
}

const stands = (ids: readonly string[]): string => `${ids.join(', ')} ${ids.length === 1 ? 'stands' : 'stand'}`;

const overloaded = ({ drawn }: Left): string | null =>
  drawn.length === 0
    ? null
    : `${stands(drawn)} with a rating of less than is asked of ${drawn.length === 1 ? 'it' : 'them'}; chargers held lower, or something larger in its place, were not looked at`;

const unknown = (): null => null;

/**
 * What of a site leaves a proposal no way round a failing finding, as far as was looked; null where that is not known. Each
 * says what was looked at and no more. Planning tips of our own.
 */
const FORCES: Partial<Readonly<Record<RuleWord, (left: Left) => string | null>>> = {
  unsupported: ({ file }) =>
    file.members?.length
      ? 'of the lines that were looked at none to it is held all along by steel that is drawn or by stringers between; draw the canopy, strut or stringer that would hold one'
      : null,
  'total-drop': ({ drawn }) =>
    drawn.length > 0
      ? `${stands(drawn)} as drawn, and so does what feeds ${drawn.length === 1 ? 'it' : 'them'}, as far as it is not new`
      : 'new feeders of up to 16 conductors of 600 kcmil in parallel, new transformers up to four sizes larger and branches held to 0.75% were looked at, and none of it holds the drop; another source was not looked at',
  // Another panel might be nearer by: places are weighed by what they cost.
  'branch-limit': unknown,
  'branch-drop': unknown,
  'feeder-overload': overloaded,
  'main-overload': overloaded,
  'bus-overload': overloaded,
  'unit-load': overloaded,
  'service-load': overloaded,
  'transformer-overload': overloaded,
  'no-run': ({ file }) =>
    (file.keepouts ?? []).some(({ blocks }) => blocks.includes('raceway'))
      ? 'no way was found along the lines that were looked at, which keep-outs that block raceways cut'
      : null,
  'spaces-short': ({ drawn }) =>
    drawn.length > 0
      ? `${stands(drawn)} with no more spaces than ${drawn.length === 1 ? 'it has' : 'they have'}`
      : null,
  'interrupting-rating': ({ file }) =>
    (file.equipment ?? []).some(({ faultAmps }) => faultAmps !== undefined)
      ? 'the fault current of the source is as it was entered'
      : null,
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
    const known = FORCES[first.rule as RuleWord];
    const why = known ? known({ file, drawn }) : drawn.length > 0 ? `${stands(drawn)} as drawn` : null;
    const more = own.length > 1 ? ` (and ${own.length - 1} more of the kind)` : '';
    // What forces it is not known: another way might be without it.
    return why === null
      ? `Left in the best way that was found: ${first.says}${more}`
      : `Forced: ${why}. ${first.says}${more}`;
  });
}

/** So many that stand are named. */
const MOST_NAMED = 4;
