import { chargingDayBench } from './charging-day.ts';
import { frameBench } from './frames/frame-bench.ts';
import { openBench } from './frames/open-bench.ts';
import { handLayouts } from './hand-layouts.ts';
import { importBench } from './imports.ts';
import { networkBench } from './network.ts';
import { planStages } from './plan-stages.ts';
import { savedOnLots } from './ruin.ts';
import { sharedRoutes } from './shared-routes.ts';
import { sheetsBench } from './sheets-bench.ts';
import { wholeProposals } from './whole-proposals.ts';

const milliseconds = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(0));

/** Rows as a table for a terminal. */
function print(title: string, rows: readonly object[]): void {
  console.log(`\n${title}`);
  console.table(rows);
}

console.log('Times are of this machine on this run; compare within one run.');
print(
  'The plan, milliseconds',
  planStages([16, 240, 2000, 20_000]).map((row) => ({
    stalls: row.stalls,
    what: row.what,
    runs: milliseconds(row.runs),
    reach: milliseconds(row.reach),
    rest: milliseconds(row.rest),
    whole: milliseconds(row.whole),
    'processor time': milliseconds(row.cpu),
    'of its own thread': Number.isNaN(row.thread) ? '' : milliseconds(row.thread),
    'asked for later': milliseconds(row.asked),
    'run feet': row.checksum.toFixed(2),
  })),
);
print(
  'All run lengths on one network, milliseconds',
  networkBench().map((row) => ({
    nodes: row.nodes,
    edges: row.edges,
    chargers: row.chargers,
    what: row.what,
    timed: row.calls,
    ms: milliseconds(row.ms),
    'times ours': row.ratio.toFixed(1),
    'length of 20': row.checksum.toFixed(2),
  })),
);

print(
  'Sheets of a lot, seconds of the processor by one thread; in the command line two share those of a large lot',
  (await sheetsBench([240, 2400])).map((row) => ({
    stalls: row.stalls,
    sheet: row.sheet,
    seconds: row.seconds.toFixed(1),
    'times those of a tenth': Number.isNaN(row.ratio) ? '' : row.ratio.toFixed(1),
    MB: row.megabytes.toFixed(1),
  })),
);
print(
  'Home runs that share raceways, 240 circuits on one root',
  sharedRoutes().map((row) => ({
    'raceway, conductor, conduit': row.weights,
    'over the best of a long run, %': row.over.toFixed(2),
    'over its bound, %': row.gap.toFixed(2),
    'processor seconds': row.seconds.toFixed(1),
  })),
);

// The pages are built by who runs this, and where they lie is told.
const { OVERROW_PEERS: peers, OVERROW_BEST: best } = process.env;
print(
  'A day of charging in 96 steps under one limit, milliseconds',
  (await chargingDayBench(best)).map((row) => ({
    cars: row.cars,
    limit: row.limit,
    what: row.what,
    ms: milliseconds(row.ms),
    kWh: row.kwh.toFixed(2),
    'bound over it, %': row.gap === undefined ? '' : row.gap.toFixed(4),
  })),
);

print(
  'All that is proposed for large lots',
  wholeProposals().map((row) => ({
    lot: row.lot,
    'processor seconds': row.seconds.toFixed(1),
    dollars: row.dollars.toFixed(0),
    panels: row.panels,
    'findings that fail': row.fails,
  })),
);

print(
  'What is proposed beside a careful hand’s layout, dollars',
  handLayouts().map((row) => ({
    lot: row.lot,
    proposed: row.proposed.toFixed(0),
    hand: row.hand.toFixed(0),
    'hand is dearer by, %': (100 * (row.hand / row.proposed - 1)).toFixed(1),
    panels: row.panels,
    'processor seconds': row.seconds.toFixed(1),
  })),
);

print(
  'What a search by ruin and recreation on the price of the plan saves on what is proposed, dollars',
  savedOnLots().map(({ lot, saved, branches }) => ({
    lot,
    branches: branches.toFixed(0),
    saved: saved.toFixed(0),
    'of the branches, %': ((100 * saved) / branches).toFixed(2),
  })),
);

if (peers) {
  print(
    'A survey that comes in, milliseconds of the processor, in the page of the clock',
    (await importBench([30_000, 280_000])).map((row) => ({
      entities: row.entities,
      MB: row.megabytes.toFixed(1),
      what: row.what,
      ms: milliseconds(row.ms),
      'times ours': row.ratio.toFixed(1),
      'longest without a frame': row.stalls === undefined ? '' : milliseconds(row.stalls),
      things: row.things,
    })),
  );
  print(
    'Opening a site file in the page: read, planned and drawn, milliseconds',
    (await openBench([240, 20_000])).map((row) => ({
      stalls: row.stalls,
      MB: row.megabytes.toFixed(1),
      'by the clock': milliseconds(row.drawn),
      'processor time of its thread': milliseconds(row.thread),
    })),
  );
  print(
    'Frames at 1600 x 900, milliseconds: 16.7 is sixty a second',
    (await frameBench(peers, [240, 20_000])).map((row) => ({
      stalls: row.stalls,
      what: row.board,
      gesture: row.gesture,
      median: row.median.toFixed(1),
      p95: row.p95.toFixed(1),
      script: row.script.toFixed(1),
    })),
  );
}
