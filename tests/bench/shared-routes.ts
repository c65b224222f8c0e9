import { sharedRoute } from '../../routing/propose/shared-route.ts';
import { routeLot } from './route-lot.ts';

export interface SharedRouteRow {
  /** Dollars of a foot that are weighed. */
  readonly weights: string;
  /** Percent over the cost of a run of 300,000 rounds, and over the bound that this one proves. */
  readonly over: number;
  readonly gap: number;
  readonly seconds: number;
}

/** Costs of runs of 300,000 rounds, some 50 processor seconds each. */
const LONG_RUNS = [
  { raceway: 6, conductor: 6, conduit: 4, cost: 1_626_805.6 },
  { raceway: 22, conductor: 5, conduit: 8, cost: 1_948_878.2 },
] as const;

/** Routes of 240 circuits and their bound, as they are sought when nothing is said of how long. */
export function sharedRoutes(): SharedRouteRow[] {
  return LONG_RUNS.map(({ raceway, conductor, conduit, cost }) => {
    const price = { raceway, conductor, conduit, circuitsPerConduit: 3 };
    const before = process.cpuUsage();
    const found = sharedRoute(routeLot({ rows: 20, columns: 52, circuits: 240, price, seed: 1 }));
    const { user, system } = process.cpuUsage(before);
    return {
      weights: `${raceway}, ${conductor}, ${conduit}`,
      over: 100 * (found.cost / cost - 1),
      gap: 100 * (1 - found.bound / found.cost),
      seconds: (user + system) / 1e6,
    };
  });
}
