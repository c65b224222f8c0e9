import { remembered } from '../../calc/memo.ts';
import { type Finding, SEVERITIES, type Severity } from '../../routing/site/finding.ts';

/** Findings with one cause: the same rule at the same severity. */
export interface FindingGroup {
  readonly key: string;
  readonly severity: Severity;
  readonly rule: string;
  readonly heading: string;
  readonly findings: readonly Finding[];
}

/** What stands over several findings of one rule. One that is not here is headed by its rule's own words. */
const HEADINGS: Readonly<Record<string, string>> = {
  bends: 'Too much bend between two openings',
  'boxes-coincide': 'Boxes in one place',
  'branch-drop': 'Branches over the voltage drop limit',
  'branch-limit': 'Branches longer than their limit',
  'circuit-size': 'Loads past the largest conductor',
  'clear-height': 'Hung too low over what passes below',
  'conduit-fill': 'Conduits too full',
  'cord-limit': 'Cords longer than allowed',
  'cords-per-drop': 'More cords at a drop than it holds',
  cover: 'Raceways buried too shallow',
  expansion: 'Straights that grow and shrink',
  'jam-ratio': 'Three lines that may jam at a bend',
  'keepout-crossed': 'Keep-outs crossed',
  'low-cord': 'Slack cords that hang low over an aisle or walk',
  'no-feeder-route': 'Feeders without a way',
  'no-run': 'Chargers without a run',
  'over-vehicle': 'Drops that hang over a vehicle',
  'pilot-budget': 'Pilots past their capacitance budget',
  'pull-length': 'Long pulls between two openings',
  'pull-tension': 'Hard pulls',
  reach: 'Cords short of an inlet',
  'rest-height': 'Connectors that rest too high or too low',
  'tray-fill': 'Trays whose fill is not checked',
  unserved: 'Stalls and drops that nothing serves',
  'vertical-support': 'Risers whose conductors need supports',
  'wet-insulation': 'Insulation that is not for wet places',
  'working-space': 'Working spaces that are not clear',
};

const inWords = (rule: string): string => `${rule.charAt(0).toUpperCase()}${rule.slice(1).replaceAll('-', ' ')}`;

/** Findings grouped by cause, what fails first; within a severity in the order in which the plan gives them. */
export const findingGroups = remembered((findings: readonly Finding[]): readonly FindingGroup[] => {
  const groups = new Map<string, { group: Omit<FindingGroup, 'findings'>; findings: Finding[] }>();
  for (const finding of findings) {
    const { severity, rule } = finding;
    const key = `${severity} ${rule}`;
    const so = groups.get(key);
    if (so) so.findings.push(finding);
    else
      groups.set(key, {
        group: { key, severity, rule, heading: HEADINGS[rule] ?? inWords(rule) },
        findings: [finding],
      });
  }
  return [...groups.values()]
    .map(({ group, findings: own }) => ({ ...group, findings: own }))
    .sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
});

/** The word for a severity. */
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = { fail: 'Fails', warn: 'Look', note: 'Note' };
