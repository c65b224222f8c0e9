import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { conduitConductors } from './circuit-words.ts';
import { figure, lengthWords, NONE } from './figures.ts';

/** A row for each conduit between two places where it can be opened. */
export function conduitSchedule({ site, plan }: Pick<Job, 'site' | 'plan'>): Table {
  return {
    short: 'conduits',
    title: 'Conduit schedule',
    columns: [
      { head: 'Conduit' },
      { head: 'From' },
      { head: 'To' },
      { head: 'Method' },
      { head: 'Size', align: 'right' },
      { head: 'Length', align: 'right' },
      { head: 'Circuits of', most: 22 },
      { head: 'Conductors', most: 24 },
      { head: 'Fill %', align: 'right' },
      { head: 'Limit %', align: 'right' },
      { head: 'Bends deg', align: 'right' },
      { head: 'Along', most: 16 },
    ],
    rows: plan.conduits.map((conduit) => [
      conduit.id,
      conduit.from,
      conduit.to,
      conduit.method,
      conduit.tradeSize === null ? NONE : `${conduit.tradeSize}"`,
      lengthWords(conduit.length, site.units),
      conduit.circuits.join(', '),
      conduitConductors(conduit),
      figure(conduit.fillPercent, 1),
      figure(conduit.fillLimit, 0),
      figure(conduit.bendDegrees, 0),
      conduit.raceways.join(', ') || NONE,
    ]),
    foot: ['Lengths are taken square at corners. G: equipment grounding conductor, one for all circuits of a conduit.'],
  };
}
