import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { addressOf, conflictsOf, type Registers, registersOf } from '../../../routing/site/records/registers.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import { asBuiltOf } from '../../plan/as-built.ts';
import { assumptionsOf } from '../../plan/assumptions.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import type { CostSheet } from '../../takeoff/bid/cost.ts';
import { type ChecklistLine, checklistOf } from '../checklist/checklist.ts';
import { markSays } from '../checklist/recorded.ts';
import { commissioning } from '../commissioning/commissioning.ts';
import { measureItems } from './measure-items.ts';

/** What may be open, in the order in which it is told. */
export const OPEN_KINDS = {
  conflict: 'Two say different things',
  finding: 'Findings',
  deviation: 'Deviations not answered',
  test: 'Tests missing or failing',
  step: 'Steps not done',
  check: 'Checklist not filled in',
  quote: 'Quotes that ran out',
  assumption: 'Assumptions to be confirmed',
} as const;
export type OpenKind = keyof typeof OPEN_KINDS;

/** Something that is still open. */
export interface OpenItem {
  readonly kind: OpenKind;
  /** Unlike that of any other item. */
  readonly key: string;
  /** What it is of: an element, a rule of the site, a quote; empty where it is of the lot. */
  readonly of: string;
  readonly says: string;
  /** Who wrote down what it is about, and when; empty where nobody did. */
  readonly by: string;
  readonly on: string;
  /** The mark that answers it; null where it closes only by what is done. */
  readonly answer: { readonly of: string; readonly part: string } | null;
}

/** Everything that is still open at a lot, kind by kind. Quotes are looked at where prices are given. */
export function openItems(
  site: Site,
  plan: UncountedPlan,
  cost: Pick<CostSheet, 'quotes' | 'bidDay'> | null,
): readonly OpenItem[] {
  const items = openAt(site, plan);
  if (cost === null) return items;
  const quotes = quoteItems(cost);
  if (quotes.length === 0) return items;
  const after = items.findIndex(({ kind }) => kind === 'assumption');
  return after < 0 ? [...items, ...quotes] : [...items.slice(0, after), ...quotes, ...items.slice(after)];
}

const openAt = kept((site: Site, plan: UncountedPlan): readonly OpenItem[] => {
  const lines = checklistOf(site, plan);
  const registers = registersOf(site.records);
  return [
    ...conflictItems(site),
    ...findingItems(site, plan),
    ...deviationItems(lines, registers),
    ...testItems(lines),
    ...measureItems(commissioning(site, plan)),
    ...stepItems(lines),
    ...checkItems(lines),
    ...assumptionItems(site, registers),
  ];
});

const CLOSED_BY_WORK = { by: '', on: '', answer: null } as const;

const conflictItems = (site: Site): readonly OpenItem[] =>
  conflictsOf(site.records).map(({ of, part, what, heads }) => ({
    kind: 'conflict',
    key: `conflict ${addressOf({ of, what, ...(part !== undefined && { part }) })}`,
    of,
    says: `${part !== undefined && what !== 'photo' ? `${part}, ` : ''}${what}: ${heads
      .map((mark) => `${mark.by || 'without initials'}: ${mark.gone ? 'taken back' : markSays(mark, site)}`)
      .join('; ')}`,
    ...CLOSED_BY_WORK,
    by: heads.map(({ by }) => by).join(', '),
    on: heads[0].on ?? '',
  }));

function findingItems(site: Site, plan: UncountedPlan): readonly OpenItem[] {
  const item = (finding: Finding, where: '' | 'As built: '): OpenItem => ({
    kind: 'finding',
    key: `finding ${where}${finding.rule} ${finding.about.join(' ')} ${finding.says}`,
    of: finding.about[0] ?? '',
    says: `${where}${finding.severity === 'fail' ? 'fails' : 'to be checked'}: ${finding.says}`,
    ...CLOSED_BY_WORK,
  });
  // How far something was built from the drawing is told as a deviation.
  const open = ({ severity, rule }: Finding): boolean => severity !== 'note' && rule !== 'as-built';
  const worst = (findings: readonly Finding[]): readonly Finding[] =>
    [...findings].filter(open).sort((a, b) => Number(b.severity === 'fail') - Number(a.severity === 'fail'));
  return [
    ...worst(plan.findings).map((finding) => item(finding, '')),
    ...worst(asBuiltOf(plan, site).findings).map((finding) => item(finding, 'As built: ')),
  ];
}

/** The part of the mark that answers what a line found. */
const answerPart = ({ mark: { what, part } }: ChecklistLine): string => (part ?? what).slice(0, 64);

/** Lines that are not as expected, unless somebody who knew of it wrote down what is made of that. */
function deviationItems(lines: readonly ChecklistLine[], registers: Registers): readonly OpenItem[] {
  return (
    lines
      // What was measured before handover is told with the tests.
      .filter(({ state, mark }) => state === 'deviates' && mark.what !== 'tested' && mark.what !== 'measured')
      .flatMap((line): OpenItem[] => {
        const { of, what, recorded, expects, by, on, time, key } = line;
        const part = answerPart(line);
        const answer = registers.get(addressOf({ of, what: 'answered', part }))?.now;
        if (answer && answer.time > time) return [];
        return [
          {
            kind: 'deviation',
            key: `deviation ${key}`,
            of,
            says: `${what}: ${recorded}; expected ${expects}`,
            by,
            on,
            answer: { of, part },
          },
        ];
      })
  );
}

const testItems = (lines: readonly ChecklistLine[]): readonly OpenItem[] =>
  lines.flatMap((line): OpenItem[] =>
    line.mark.what !== 'tested' || line.state === 'ok'
      ? []
      : [
          {
            kind: 'test',
            key: `test ${line.key}`,
            of: line.of,
            says: line.state === 'open' ? 'not tested' : `${line.what}: ${line.recorded}`,
            ...CLOSED_BY_WORK,
            by: line.by,
            on: line.on,
          },
        ],
  );

/** One item for each thing, with all its steps that are not done. */
const stepItems = (lines: readonly ChecklistLine[]): readonly OpenItem[] =>
  byElement(
    lines.filter(
      ({ expected, mark, state }) => expected?.kind === 'step' && mark.what !== 'tested' && state === 'open',
    ),
  ).map(([of, own]) => ({
    kind: 'step',
    key: `step ${of}`,
    of,
    says: `not ${own.map(({ mark }) => mark.what).join(', not ')}`,
    ...CLOSED_BY_WORK,
  }));

/** One item for each thing, with how much of its part of the checklist is empty. */
const checkItems = (lines: readonly ChecklistLine[]): readonly OpenItem[] =>
  byElement(lines.filter(({ expected }) => expected !== null && expected.kind !== 'step')).flatMap(
    ([of, own]): OpenItem[] => {
      const open = own.filter(({ state }) => state === 'open');
      if (open.length === 0) return [];
      return [
        {
          kind: 'check',
          key: `check ${of}`,
          of,
          says: `${open.length} of ${own.length} not recorded: ${open
            .slice(0, NAMED)
            .map(({ what }) => what)
            .join('; ')}${open.length > NAMED ? '; and more' : ''}`,
          ...CLOSED_BY_WORK,
        },
      ];
    },
  );

/** Lines that are named of one thing. */
const NAMED = 3;

function byElement(lines: readonly ChecklistLine[]): readonly (readonly [string, readonly ChecklistLine[]])[] {
  const groups = new Map<string, ChecklistLine[]>();
  for (const line of lines) addTo(groups, line.of, line);
  return [...groups];
}

const quoteItems = ({ quotes, bidDay }: Pick<CostSheet, 'quotes' | 'bidDay'>): readonly OpenItem[] =>
  quotes
    .filter(({ standing }) => standing === 'ran out')
    .map(({ name, validUntil }) => ({
      kind: 'quote',
      key: `quote ${name}`,
      of: name,
      says: `valid until ${validUntil}, and the bid is of ${bidDay}`,
      ...CLOSED_BY_WORK,
    }));

/** What the plan assumes, until somebody wrote down that it was confirmed at the value that it has. */
const assumptionItems = (site: Site, registers: Registers): readonly OpenItem[] =>
  assumptionsOf(site).flatMap(({ key, name, value, confirm }): OpenItem[] => {
    const answer = { of: key, part: value.slice(0, 64) || 'as it is' };
    if (registers.get(addressOf({ ...answer, what: 'answered' }))?.now) return [];
    return [
      {
        kind: 'assumption',
        key: `assumption ${key}`,
        of: name,
        says: `${value}: to be confirmed by ${confirm}`,
        ...CLOSED_BY_WORK,
        answer,
      },
    ];
  });
