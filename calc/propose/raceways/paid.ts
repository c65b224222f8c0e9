import { runsOf } from '../../../routing/network/runs.ts';
import type { FloorPrice } from '../../../routing/propose/raceways/least-under.ts';
import type { RacewaysPaid } from '../../../routing/propose/raceways/raceway-make.ts';
import type { Pullpoint, Site } from '../../../routing/site/site.ts';
import { allBuried, NO_BOXES, sharedBoxes } from '../../branches/boxes/boxes.ts';
import { handholesOf } from '../../branches/boxes/handholes.ts';
import { designOf } from '../../branches/design.ts';
import { conduitsOf, equipmentBranches } from '../../branches/equipment-branches.ts';
import { equipmentPhases } from '../../plan/circuits.ts';
import { COUNTING } from '../../plan/counting.ts';
import { plan } from '../../plan/plan.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { type BillSums, bidOf } from '../../takeoff/bid/bid.ts';
import { takeoffSystem } from '../../takeoff/systems.ts';
import { billOf, billSum, worthOf, worthOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { branchPullPlaces } from './pull-points.ts';

/** Pull points bring others with them: so often are conduits looked at again. */
const ROUNDS = 6;

/** So many answers are looked at for one piece of equipment at most. */
const MOST = 300;
/** Answers times all the chargers of the lot: each charger takes its time to plan. */
const EFFORT = 7200;
/** Fewer than these are not worth beginning. */
const FEW = 12;

/** Answers that are planned and priced for each piece of equipment of a lot with so many chargers. */
export function answersJudged(chargers: number): number {
  const each = Math.min(MOST, Math.floor(EFFORT / Math.max(1, chargers)));
  return each < FEW ? 0 : each;
}

/**
 * What branches add to the bid by their takeoff: the site is planned with the raceways that are asked about, with what the same
 * equipment feeds already, for they share conduits, and with nothing that they do not change. Pull points stand where they
 * are wanted. The last to be laid is priced with all that is laid: whole sticks and reels are cut for all equipment
 * together, and hours go by how many pieces are alike on the lot. What is due for it is then the bid of the whole lot, with
 * its days of lifts and traffic control by wholes.
 * @param rounds answers that are looked at for a piece of equipment
 * @param held a site whose feeders are as wide as they are to be, its branches held to the drop that they are to have:
 *   those for which the feeders are too narrow fail
 */
export function racewaysPaid(
  prices: PriceList,
  rounds: number,
  floor: FloorPrice | null,
  held?: Pick<Site, 'equipment' | 'feeders' | 'chargers'>,
): RacewaysPaid {
  const asHeld = (site: Site): Site => (held ? { ...site, equipment: held.equipment, feeders: held.feeders } : site);
  /** Of the lot, what no routes change. */
  let beside: BillSums | null = null;
  const judge: RacewaysPaid['judge'] = (asked, from, chargers, isLast) => {
    const drawn = held ? limitedAs(asked, held) : asked;
    const isAll = isLast || chargers.size === drawn.chargers.length;
    const own = isAll ? drawn.chargers : drawn.chargers.filter((one) => one.from === from);
    const branched = withPulls(branchesAlone(drawn, new Set(isAll ? own.map((one) => one.from) : [from]), own));
    const rows = takeoffOf(branched);
    const { site } = branched;
    const bill = billOf(isAll ? rows : rows.map(unstocked), prices);
    const cost = worthOf(bill, prices);
    if (isAll)
      beside ??= billSum(billOf(plan({ ...asHeld(drawn), pullpoints: site.pullpoints }).takeoff, prices), bill, -1);
    return {
      cost,
      due: isAll && beside ? bidOf(billSum(beside, bill), prices).price : cost,
      fails: () => failsOf(plan(asHeld(site)).findings).length,
    };
  };
  return { rounds, ...(floor && { floor }), judge };
}

/** Chargers held to the drop that others of their names are held to. */
function limitedAs(site: Site, { chargers }: Pick<Site, 'chargers'>): Site {
  const limits = new Map(chargers.map(({ id, branchDrop }) => [id, branchDrop]));
  if (site.chargers.every(({ id, branchDrop }) => (limits.get(id) ?? branchDrop) === branchDrop)) return site;
  return {
    ...site,
    chargers: site.chargers.map((one) => {
      const branchDrop = limits.get(one.id) ?? one.branchDrop;
      return branchDrop === undefined ? one : { ...one, branchDrop };
    }),
  };
}

/** What branches from one piece of equipment come to with all that hangs at them, by their feet, and what each loses. */
export function branchesWorth(site: Site, prices: PriceList, from: string, own: Site['chargers']) {
  const branched = branchesOf(branchesAlone(site, new Set([from]), own));
  return {
    dollars: worthOf(billOf(takeoffOf(branched).map(unstocked), prices), prices),
    circuits: branched.branches.flatMap(({ circuits }) => circuits.flatMap((one) => one ?? [])),
  };
}

/**
 * What the branches from some equipment to some chargers add to the bid as they are drawn: what counts as branches in a
 * bill, by its feet, with all that is laid on it, lifts and traffic control by parts of their days.
 */
export function branchesCost(site: Site, prices: PriceList, from: string, chargers: readonly string[]): number {
  const ids = new Set(chargers);
  const own = site.chargers.filter(({ id }) => ids.has(id));
  const rows = takeoffOf(branchesOf(branchesAlone(site, new Set([from]), own)));
  return worthOfRows(rows.filter(({ item, spec }) => takeoffSystem(item, spec) === 'branches').map(unstocked), prices);
}

/** By the feet themselves: whole sticks and reels are cut for all equipment together. */
const unstocked = ({ item, spec, unit, quantity, high, lift, basis }: TakeoffRow): TakeoffRow => ({
  item,
  spec,
  unit,
  quantity,
  high,
  ...(lift !== undefined && { lift }),
  basis,
  of: [],
  parts: [],
});

/** The branches from some equipment to some chargers, and what holds them. */
function branchesAlone(site: Site, from: ReadonlySet<string>, own: Site['chargers']): Site {
  const drops = new Set(own.map(({ drop }) => drop));
  return {
    ...site,
    stalls: [],
    aisles: [],
    feeders: [],
    days: [],
    loads: [],
    equipment: site.equipment.filter(({ id }) => from.has(id)),
    drops: site.drops.filter(({ id }) => drops.has(id)),
    chargers: own.map((charger) => ({ ...charger, stalls: [] })),
  };
}

/** A site with its branches. */
interface Branched {
  readonly site: Site;
  readonly design: ReturnType<typeof designOf>;
  readonly branches: ReturnType<typeof equipmentBranches>;
}

function branchesOf(site: Site): Branched {
  const design = designOf(site.rules);
  return { site, design, branches: equipmentBranches(site, runsOf(site).runs, design) };
}

function withPulls(site: Site): Branched {
  let now = branchesOf(site);
  for (let round = 0; round < ROUNDS; round++) {
    const { pullpoints } = now.site;
    const fresh = branchPullPlaces(now.site, conduitsOf(now.branches));
    if (fresh.length === 0) break;
    const added = fresh.map((at, i): Pullpoint => ({ id: ` ${pullpoints.length + i}`, at: [...at] }));
    now = branchesOf({ ...now.site, pullpoints: [...pullpoints, ...added] });
  }
  return now;
}

const NO_FEEDERS = { byRaceway: new Map() };

/** The takeoff of a site without feeders. */
function takeoffOf({ site, design, branches }: Branched) {
  const shared = sharedBoxes(branches, design);
  const handholes = handholesOf(allBuried(site, branches, shared, NO_BOXES), site.stalls, site.aisles);
  const supports = COUNTING.supportsOf(site, branches, NO_FEEDERS, design.tables);
  const boxes = { shared, onFeeders: NO_BOXES, handholes };
  return COUNTING.takeoff(site, design.tables, branches, equipmentPhases(site), boxes, [], supports);
}
