import { addressOf } from '../../../routing/site/records/registers.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { commissioning } from '../commissioning/commissioning.ts';
import type { ReadingStanding } from '../commissioning/judged.ts';
import { GROUP_WORDS, readingWords } from '../commissioning/measures.ts';
import type { ChecklistLine, LineState } from './checklist.ts';

const STATES: Readonly<Partial<Record<ReadingStanding, LineState>>> = { passes: 'ok', fails: 'deviates' };
const LISTS = { charger: 'chargers', feeder: 'feeders', board: 'equipment' } as const;

/** The tests before handover that were read, each beside what it is held to; the sheets of tests have the others. */
export const measuredLines = (site: Site, plan: UncountedPlan): readonly ChecklistLine[] =>
  commissioning(site, plan).flatMap(({ kind, rows }) =>
    rows.flatMap(({ of, measure, limit, register, reading, standing, says }): ChecklistLine[] => {
      const now = register?.now;
      if (!now || reading === null) return [];
      const mark = { what: now.what, ...(now.part !== undefined && { part: now.part }) };
      return [
        {
          key: addressOf({ of, ...mark }),
          of,
          list: LISTS[kind],
          what: `${GROUP_WORDS[measure.group]}, ${measure.name}`,
          where: '',
          rule: limit.source,
          expected: null,
          expects: limit.says,
          recorded: [readingWords(reading), says].filter(Boolean).join(': '),
          by: now.by,
          on: now.on ?? '',
          time: now.time,
          conflict: register.conflict,
          state: STATES[standing] ?? 'noted',
          mark,
        },
      ];
    }),
  );
