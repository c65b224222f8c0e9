/**
 * Overrow as a library: a site goes in, a plan comes out. No DOM, no disk, no network, no clock; runs in Node and in a
 * browser. `overrow/calc` has the single calculations.
 */
import { graphOf, type RacewayGraph } from '../../routing/network/graph.ts';
import { networkOf } from '../../routing/network/network.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan as planOf } from '../plan/plan.ts';
import { publishedPlan } from '../plan/write-plan.ts';
import type { PlanFile } from '../plan-file/plan-file.ts';
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
 * @example
 * // Hand-worked: 4 ft up and 50 ft along; 5 ft more of conductor at the panel and 1 ft at the box
 * plan({ format: 'overrow/site', version: 1, units: 'ft', name: 'lot',
 *   equipment: [{ id: 'P1', kind: 'panelboard', at: [0, 1], size: [2, 1, 6], entry: [0, 0, 8], volts: 208, phases: 3 }],
 *   raceways: [{ id: 'R1', path: [[0, 0, 8], [0, 0, 12], [50, 0, 12]], method: 'EMT', place: 'overhead' }],
 *   drops: [{ id: 'D1', box: [50, 0, 12], cord: 25 }],
 *   chargers: [{ id: 'E1', drop: 'D1', stalls: [], from: 'P1', amps: 32, volts: 208, phases: 1 }],
 * }).runs.map(({ length, conductorLength }) => [length, conductorLength]) // [[54, 60]]
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

/**
 * What could be drawn in where it is missing, with how near the best it is; nothing that stands is moved.
 * @example
 * // Hand-worked: two stalls side by side need one drop with two cords, over the stripe between them
 * propose(
 *   { format: 'overrow/site', version: 1, units: 'ft', name: 'lot', stalls: [
 *     { id: 'S1', at: [0, 0], width: 9, depth: 18, heading: 90 },
 *     { id: 'S2', at: [9, 0], width: 9, depth: 18, heading: 90 },
 *   ] },
 *   { what: 'drops', cords: 2 },
 * ).file.drops.map(({ box }) => box[0]) // [4.5]
 */
export const propose = (file: SiteFile, { what = 'all', cords = 1, prices, tell }: ProposeWish = {}): Proposal =>
  proposeFor(file, { what, cordsADrop: cords, prices: prices ?? INVENTED_LIST }, tell);

/**
 * The raceways of a site as a graphology graph, for other graph algorithms: nodes with `x`, `y`, `z`, edges with their
 * `length` in feet and their `raceway`, null across the gap of a joint. Raceways that come within the join tolerance of
 * one another are joined (site rule). Pure; change a copy, for the graph may be handed out again.
 * @example
 * // Hand-worked: 3 ft one way and 4 ft square to it are 5 ft
 * racewayGraph({ format: 'overrow/site', version: 1, units: 'ft', name: 'lot',
 *   raceways: [{ id: 'R1', path: [[0, 0, 10], [3, 4, 10]], method: 'EMT', place: 'overhead' }],
 * }).mapEdges((_, { raceway, length }) => [raceway, length]) // [['R1', 5]]
 */
export function racewayGraph(file: SiteFile): RacewayGraph {
  const { raceways, rules } = toSite(file);
  return graphOf(networkOf(raceways, rules.joinTolerance));
}
