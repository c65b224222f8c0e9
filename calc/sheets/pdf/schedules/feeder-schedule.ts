import { byId } from '../../../../routing/site/look-up.ts';
import type { Feeder } from '../../../../routing/site/site.ts';
import { designOf } from '../../../branches/design.ts';
import { protectorsOf } from '../../../supply/devices/protecting.ts';
import { feederConduits } from '../../../supply/feeders/feeder-conduit.ts';
import { isLengthKnown } from '../../../supply/feeders/feeder-known.ts';
import { feederIsOver } from '../../../supply/tree/over-limit.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { conduitConductors, conduitSize, overLimitWords } from './circuit-words.ts';
import { ampsFigure, figure, lengthWords, NONE } from './figures.ts';
import { packetEntries, packetNumbers } from './packet-entries.ts';

/** What each feeder is made of, as `FeederConduit`, by its id. */
export const feederConduitsOf = ({ site }: Pick<Job, 'site'>) =>
  new Map(feederConduits(site, designOf(site.rules).tables).map((conduit) => [conduit.feeder.id, conduit]));

/** A row for each feeder: what it joins, what it is made of, its load and drop. */
export function feederSchedule(job: Pick<Job, 'site' | 'plan'>): Table {
  const { site, plan } = job;
  const solved = byId(plan.supply.feeders);
  const conduits = feederConduitsOf(job);
  const numbers = packetNumbers(packetEntries(site, plan));
  const { nodes } = treeOf(site);
  const { tables } = designOf(site.rules);
  return {
    short: 'feeders',
    title: 'Feeder schedule',
    columns: [
      { head: 'Feeder' },
      { head: 'From' },
      { head: 'To' },
      { head: 'Sets', align: 'right' },
      { head: 'Conductors of each set', most: 24 },
      { head: 'Raceway of each set' },
      { head: 'Length', align: 'right' },
      { head: 'Breaker' },
      { head: 'Amps A, B, C', align: 'right' },
      { head: 'Loaded %', align: 'right' },
      { head: 'Drop %', align: 'right' },
      { head: 'Loss W', align: 'right' },
      { head: 'Work' },
      { head: 'Calculation' },
    ],
    rows: site.feeders.map((feeder) => {
      const { id, from, to, conductor, breakerAmps, existing } = feeder;
      const conduit = conduits.get(id);
      const node = nodes.find((one) => one.feeder === feeder);
      const isOver = node !== undefined && feederIsOver(tables, node);
      const result = solved.get(id);
      const isKnown = isLengthKnown(feeder, result);
      const words = isOver
        ? overLimitWords(tables)
        : conduit === undefined
          ? conductor.size
          : `${conduitConductors(conduit)}, ${conductor.metal} ${conductor.insulation}`;
      return [
        id,
        from,
        to,
        String(conductor.sets),
        words,
        isOver ? NONE : conduit === undefined ? (feeder.raceway ?? NONE) : conduitSize(conduit),
        isKnown ? lengthWords(result?.length ?? feeder.length, site.units) : NONE,
        `${breakerAmps} A ${placeWords(plan, feeder)}`.trim(),
        result === undefined ? NONE : [result.amps.A, result.amps.B, result.amps.C].map(ampsFigure).join(', '),
        figure(result?.percentLoaded, 0),
        isKnown ? figure(result?.dropPercent, 2) : NONE,
        isKnown ? figure(result?.lossWatts, 0) : NONE,
        existing === true ? 'existing' : 'new',
        numbers.get(id) ?? NONE,
      ];
    }),
  };
}

/** Where the device of a feeder stands; nothing of one that the supply has not. */
function placeWords({ devices }: Job['plan'], { id, from, to }: Feeder): string {
  const own = protectorsOf(devices).get(id) ?? [];
  if (own.length === 0) return '';
  return own.length > 1 ? 'at both ends' : `at ${own[0]!.id === `${id}.from` ? from : to}`;
}
