import { kept } from '../../kept/kept.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { AccessibleBy, Units } from '../../site/schema/vocabulary.ts';
import type { Aisle, Charger, Site, Stall } from '../../site/site.ts';
import { counted } from '../../words/counted.ts';
import { type AccessibleStall, accessibleTable, SLACK } from './accessible-stalls.ts';
import { ACCESS_STANDARDS, ACCESSIBLE_WORDS, ADA_SOURCE } from './standards.ts';

/**
 * Accessible stalls among those with a charger: `accessible-count`, fewer than the standard that the site chooses asks for;
 * `accessible-size`, narrower or shorter than asked, or without an access aisle beside them.
 */
export const accessibleFindings = ({ stalls, aisles, chargers, rules, units }: Site): readonly Finding[] =>
  found(stalls, aisles, chargers, rules.accessibleBy, units);

const found = kept(
  (
    stalls: readonly Stall[],
    aisles: readonly Aisle[],
    chargers: readonly Charger[],
    by: AccessibleBy,
    units: Units,
  ): readonly Finding[] => {
    const table = accessibleTable(stalls, aisles, chargers, by);
    return [
      ...table.counts.filter(({ standard }) => standard === by).flatMap((row) => countFinding(row, by)),
      ...table.stalls.flatMap((one) => sizeFindings(one, by, units)),
    ];
  },
);

type Count = ReturnType<typeof accessibleTable>['counts'][number];

function countFinding({ use, of, asked, given, standard, source }: Count, by: AccessibleBy): readonly Finding[] {
  if (given >= asked) return [];
  const { counts, isCode } = ACCESS_STANDARDS[standard];
  const among = counts === 'stalls' ? `${counted(of, 'stall')} with a charger` : `${counted(of, 'vehicle')} at once`;
  return [
    {
      severity: by === 'california' && isCode ? 'fail' : 'warn',
      rule: 'accessible-count',
      about: [],
      says: `${given} of ${among} ${given === 1 ? 'is' : 'are'} ${ACCESSIBLE_WORDS[use]}; ${counted(asked, 'is', 'are')} asked for. Give more stalls that use, with a charger.`,
      value: given,
      limit: asked,
      source: `${source}; ${siteRule('accessibleBy')}`,
    },
  ];
}

function sizeFindings(one: AccessibleStall, by: AccessibleBy, units: Units): readonly Finding[] {
  const { stall, use, aisle, asked, source, underAda } = one;
  const length = (feet: number): string => printLength(feet, units);
  const isCode = by !== 'none' && ACCESS_STANDARDS[by].isCode;
  const base = { rule: 'accessible-size', about: [stall.id], unit: 'ft', source } as const;
  const what = `${stall.id}, ${ACCESSIBLE_WORDS[use]},`;
  const findings: Finding[] = [];
  if (stall.width < asked.width - SLACK)
    findings.push({
      ...base,
      severity: underAda || isCode ? 'fail' : 'warn',
      says: `${what} is ${length(stall.width)} wide; ${length(asked.width)} is asked for.`,
      value: stall.width,
      limit: asked.width,
      source: underAda ? `${ADA_SOURCE}${by === 'none' ? '' : `; ${source}`}` : source,
    });
  if (stall.depth < asked.depth - SLACK)
    findings.push({
      ...base,
      severity: isCode ? 'fail' : 'warn',
      says: `${what} is ${length(stall.depth)} long; ${length(asked.depth)} is asked for.`,
      value: stall.depth,
      limit: asked.depth,
    });
  if (aisle < asked.aisle - SLACK)
    findings.push({
      ...base,
      severity: 'warn',
      says:
        aisle === 0
          ? `No access aisle is drawn along ${what.slice(0, -1)}: ${length(asked.aisle)} wide and as long as the stall is asked for. Draw it as an aisle of the kind access.`
          : `The access aisle along ${what} is ${length(aisle)} wide; ${length(asked.aisle)} is asked for.`,
      value: aisle,
      limit: asked.aisle,
      source: `${ADA_SOURCE}${by === 'none' ? '' : `; ${source}`}`,
    });
  return findings;
}
