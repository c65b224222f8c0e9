import type { LoadCalculation } from '../../../plan-file/loads.ts';
import { loadRows, serviceWords } from '../../../supply/service/load-rows.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { systemName } from '../../../supply/tree/system.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { whyLoad } from '../../../why/why-supply.ts';
import type { Step } from '../../../words/explain.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { ampsFigure, figure, NONE } from './figures.ts';

/** The load calculation of each service and its steps; none where nothing is fed. */
export function loadTables(job: Job): readonly Table[] {
  const loads = job.plan.loadCalculations.filter(({ chargers, loads: others }) => chargers.length + others.length > 0);
  return loads.flatMap((load) => [loadTable(job, load), stepsTable(job, load)]);
}

/** What the service of a source carries, counted every way. */
export function loadTable({ site }: Pick<Job, 'site'>, load: LoadCalculation): Table {
  const node = treeOf(site).nodes.find(({ equipment }) => equipment.id === load.at);
  return {
    short: 'load',
    title: `Load calculation, service of ${load.source}`,
    isWhole: true,
    lead: [
      `${node === undefined ? `${Math.round(load.volts)} V` : systemName(node.system)}, ${load.phases} phase, amperes at ${load.at}`,
      `Service equipment: ${load.service.length === 0 ? 'none drawn' : serviceWords(load)}`,
    ],
    columns: [
      { head: 'Load', most: 40 },
      { head: 'Number', align: 'right' },
      { head: 'Nameplate VA', align: 'right' },
      { head: 'Counted VA', align: 'right' },
      { head: 'A', align: 'right' },
      { head: 'B', align: 'right' },
      { head: 'C', align: 'right' },
      { head: 'By', most: 26 },
    ],
    rows: loadRows(load, tablesOf(site.rules)).map(({ what, number, nameplateVa, countedVa, amps, by }) => [
      what,
      number === null ? NONE : String(number),
      figure(nameplateVa ?? undefined, 0),
      figure(countedVa ?? undefined, 0),
      ...(amps === null ? [NONE, NONE, NONE] : amps.map(ampsFigure)),
      by,
    ]),
  };
}

const stepsTable = ({ site }: Pick<Job, 'site'>, load: LoadCalculation): Table => ({
  short: 'steps',
  title: `How it was found, service of ${load.source}`,
  columns: [
    { head: 'Found', most: 18 },
    { head: 'Formula', most: 34 },
    { head: 'Values', most: 34 },
    { head: 'Result', align: 'right' },
    { head: 'By', most: 26 },
  ],
  rows: whyLoad(site, load.source).map((step) => [
    step.find,
    step.formula,
    Object.entries(step.values)
      .map(([name, value]) => `${name} ${value}`)
      .join('; '),
    resultOf(step),
    step.source,
  ]),
});

const resultOf = ({ result, unit = '' }: Step): string =>
  `${typeof result === 'number' ? figure(result, result >= 1000 ? 0 : 1) : result} ${unit}`.trim();
