import type { Site } from '../../../routing/site/site.ts';
import { commissioning } from '../../field/commissioning/commissioning.ts';
import { GROUP_WORDS, unitWords } from '../../field/commissioning/measures.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A row for each test of each board, feeder and charger: what it is held to and by whom, what was read, and what came of it. */
export function commissioningSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const head = [
    'of',
    'kind',
    'test',
    'where',
    'asked',
    'expected',
    'read',
    'unit',
    'answer',
    'at load (A)',
    'by',
    'on',
    'result',
    'why',
    'source',
  ];
  const rows = commissioning(site, plan).flatMap(({ kind, rows: own }) =>
    own.map(({ of, measure, limit, reading, register, standing, says }): Cell[] => {
      const unit = reading?.unit ?? measure.unit;
      return [
        of,
        kind,
        GROUP_WORDS[measure.group],
        measure.name,
        limit.says,
        limit.expected === undefined ? null : Number(limit.expected.toFixed(2)),
        reading?.value ?? null,
        unit === null ? '' : unitWords(unit),
        reading?.word ?? '',
        reading?.amps ?? null,
        register?.now?.by ?? '',
        register?.now?.on ?? '',
        standing,
        says,
        limit.source,
      ];
    }),
  );
  return [head, ...rows, [], [CAUTIONS]];
}
