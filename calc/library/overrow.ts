/**
 * Overrow as a library: a site goes in, a plan comes out. No DOM, no disk, no network, no clock; runs in Node and in a
 * browser. `overrow/calc` has the single calculations.
 */
import { graphOf, type RacewayGraph } from '../../routing/network/graph.ts';
import { networkOf } from '../../routing/network/network.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan as planOf } from '../plan/plan.ts';
import { publishedPlan } from '../plan/published-plan.ts';
import type { PlanFile } from '../plan-file.ts';
import { INVENTED_LIST } from '../prices/invented-list.ts';
import type { PriceList } from '../prices/price-list.ts';
import { type Doing, type Proposal, propose as proposeFor, type What } from '../propose/propose.ts';

export type { SiteError } from '../../routing/site/file/place.ts';
export { type ReadResult, readSite, readSiteValue } from '../../routing/site/file/read.ts';
export { writeSite } from '../../routing/site/file/write.ts';
export type { Finding, Severity } from '../../routing/site/rules/finding.ts';
export type { SiteFile } from '../../routing/site/site.ts';
export type { PriceList } from '../prices/price-list.ts';
export { type PricesRead, readPrices } from '../prices/read-prices.ts';
export { CAUTIONS } from '../words/cautions.ts';
export type { Doing, PlanFile, Proposal, RacewayGraph };

/**
 * The plan of a site as the command line prints it with `--json`: runs, reach, circuits, conduits, supply, takeoff and
 * findings, in the units of the site file. Pure: the same file gives the same plan.
 */
export function plan(file: SiteFile): PlanFile {
  const site = toSite(file);
  return publishedPlan(planOf(site), site);
}

export interface ProposeWish {
  /** What is to be drawn in; all of it where not said. */
  readonly what?: What;
  /** Cords to one new drop, 1 to 6; 1 where not said. */
  readonly cords?: number;
  /** By which routes are weighed; invented prices where not said. */
  readonly prices?: PriceList;
  /** Hears what is being worked on and how far it is. */
  readonly tell?: (doing: Doing) => void;
}

/** What could be drawn in where it is missing, with how near the best it is; nothing that stands is moved. */
export const propose = (file: SiteFile, { what = 'all', cords = 1, prices, tell }: ProposeWish = {}): Proposal =>
  proposeFor(file, { what, cordsADrop: cords, prices: prices ?? INVENTED_LIST }, tell);

/**
 * The raceways of a site as a graphology graph, for other graph algorithms: nodes with `x`, `y`, `z`, edges with their
 * `length` in feet and their `raceway`, null across the gap of a joint. Raceways that come within the join tolerance of
 * one another are joined (site rule). Pure; change a copy, for the graph may be handed out again.
 */
export function racewayGraph(file: SiteFile): RacewayGraph {
  const { raceways, rules } = toSite(file);
  return graphOf(networkOf(raceways, rules.joinTolerance));
}
