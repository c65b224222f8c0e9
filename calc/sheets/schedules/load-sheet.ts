import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { loadRows } from '../../supply/service/load-rows.ts';
import { tablesOf } from '../../tables/editions.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** The load calculation of each service: a row for each kind of load, each way of counting it, and what comes of it. */
export function loadSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const tables = tablesOf(site.rules);
  const head = [
    'service of',
    'what',
    'number',
    'nameplate (VA)',
    'counted (VA)',
    'line A (A)',
    'line B (A)',
    'line C (A)',
    'by',
  ];
  const rows = plan.loadCalculations.flatMap((load) =>
    loadRows(load, tables).map(({ what, number, nameplateVa, countedVa, amps, by }): Cell[] => [
      load.source,
      what,
      number,
      whole(nameplateVa),
      whole(countedVa),
      ...(amps ?? [null, null, null]).map((one) => (one === null ? null : Number(one.toFixed(1)))),
      by,
    ]),
  );
  return [head, ...rows, [], [CAUTIONS]];
}

const whole = (va: number | null): number | null => (va === null ? null : Math.round(va));
