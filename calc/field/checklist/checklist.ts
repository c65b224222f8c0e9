import { kept } from '../../../routing/kept/kept.ts';
import type { ElementList } from '../../../routing/site/kinds/kinds.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import { addressOf, registersOf } from '../../../routing/site/records/registers.ts';
import type { Mark, Site } from '../../../routing/site/site.ts';
import { sourceOf } from '../../checks/checks.ts';
import { RULES } from '../../checks/rules.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { tablesOf } from '../../tables/editions.ts';
import type { AskedLine, Expected, MarkAddress } from './asked.ts';
import { circuitLines } from './circuit-lines.ts';
import { conduitLines } from './conduit-lines.ts';
import { dropLines } from './drop-lines.ts';
import { equipmentChecklist, stallLines, standingLines } from './equipment-lines.ts';
import { measuredLines } from './measured-lines.ts';
import { markSays, recordedFor } from './recorded.ts';

/**
 * How a line stands: nothing is written down; what is written down is as expected, or is not; something is written down
 * and the plan has nothing to hold it against.
 */
export const LINE_STATES = ['open', 'ok', 'deviates', 'noted'] as const;
export type LineState = (typeof LINE_STATES)[number];

/** A line of the inspection: what is expected by which rule, what was found, by whom and when. It claims nothing more. */
export interface ChecklistLine {
  /** Unlike that of any other line. */
  readonly key: string;
  readonly of: string;
  /** Null where what it is of is not drawn. */
  readonly list: ElementList | null;
  readonly what: string;
  readonly where: string;
  /** What it is checked against, as the plan knows it. */
  readonly rule: string;
  /** Null where the plan expects nothing. */
  readonly expected: Expected | null;
  readonly expects: string;
  readonly recorded: string | null;
  readonly by: string;
  readonly on: string;
  /** Logical time of what was recorded; 0 where nothing was. */
  readonly time: number;
  readonly conflict: boolean;
  readonly state: LineState;
  /** The mark that it is recorded by. */
  readonly mark: MarkAddress;
}

/** All lines of a lot, from its own circuits and rules, kind by kind in the order of the site, with what was recorded. */
export const checklistOf = kept((site: Site, plan: UncountedPlan): readonly ChecklistLine[] => {
  const asked = askedOf(site, plan);
  const registers = registersOf(site.records);
  const lines = asked.map((line): ChecklistLine => {
    const { of, list, what, where, expected, mark } = line;
    const found = recordedFor(line, site, registers);
    return {
      key: addressOf({ of, ...mark }),
      of,
      list,
      what,
      where,
      rule: ruleWordsOf(line, site),
      expected,
      expects: expectedWords(expected, site),
      recorded: found?.says ?? null,
      by: found?.by ?? '',
      on: found?.on ?? '',
      time: found?.time ?? 0,
      conflict: found?.conflict ?? false,
      state: found === null ? 'open' : found.isAsExpected ? 'ok' : 'deviates',
      mark,
    };
  });
  const told = [...lines, ...measuredLines(site, plan)];
  return [...told, ...otherLines(site, new Set(told.map(({ key }) => key)))];
});

const askedOf = (site: Site, plan: UncountedPlan): readonly AskedLine[] => [
  ...dropLines(site),
  ...circuitLines(site, plan),
  ...conduitLines(site, plan),
  ...standingLines(site),
  ...equipmentChecklist(site, plan),
  ...stallLines(site),
];

/** Marks that are no findings of an inspection: of the drawing, of lines to measure from, of what goes with a record. */
const ASIDE: ReadonlySet<Mark['what']> = new Set(['renamed', 'moved', 'line', 'note', 'photo', 'answered']);

/** What else was recorded: the plan has nothing to hold it against. */
function otherLines(site: Site, known: ReadonlySet<string>): readonly ChecklistLine[] {
  return [...registersOf(site.records)].flatMap(([key, { of, what, part, now, conflict }]): ChecklistLine[] =>
    known.has(key) || ASIDE.has(what) || now === null
      ? []
      : [
          {
            key,
            of,
            list: null,
            what: part === undefined ? what : `${what}: ${part}`,
            where: '',
            rule: 'as it was written down; the plan expects nothing',
            expected: null,
            expects: '',
            recorded: markSays(now, site),
            by: now.by,
            on: now.on ?? '',
            time: now.time,
            conflict,
            state: 'noted',
            mark: { what, ...(part !== undefined && { part }) },
          },
        ],
  );
}

/** What a line goes by: the source of the check, and the check as the sheets call it. */
function ruleWordsOf({ rule, source }: AskedLine, { rules }: Site): string {
  if (rule === null) return source ?? 'step of the work';
  if (rule === 'as-built') return 'the drawing, to the tolerance of this site';
  const { title } = RULES[rule];
  return `${sourceOf(RULES[rule], tablesOf(rules))} (${title.charAt(0).toLowerCase()}${title.slice(1)})`;
}

/** What a line expects, in words: limits, and what the plan has within them. */
function expectedWords(expected: Expected, { gridlines, units }: Site): string {
  if (expected.kind === 'step') return 'done';
  if (expected.kind === 'seen') return expected.words;
  if (expected.kind === 'place')
    return `${gridlineWords(expected.at, gridlines, units)}, to ${printLength(expected.within, units)}`;
  const { least, most, drawn } = expected;
  const value = (it: number): string =>
    expected.kind === 'length' ? printLength(it, units) : `${it}${expected.unit && ` ${expected.unit}`}`;
  const limits =
    least !== undefined && least === most
      ? value(least)
      : least !== undefined && most !== undefined
        ? `${value(least)} to ${value(most)}`
        : least !== undefined
          ? `${value(least)} or more`
          : `${value(most!)} or less`;
  return drawn === undefined ? limits : `${limits}; planned ${value(drawn)}`;
}
