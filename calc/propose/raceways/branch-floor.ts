import type { FloorPrice } from '../../../routing/propose/raceways/least-under.ts';
import type { SharedPrice } from '../../../routing/propose/shared/shared-cost.ts';
import type { Charger, Drop, Rules, Site } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import { INVENTED_LIST } from '../../prices/invented-list.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { tablesOf } from '../../tables/editions.ts';
import { supportSpacing } from '../../tables/raceway-of.ts';
import { costOf } from '../../takeoff/bid/cost.ts';
import { takeoffOf } from '../panels/trial-price.ts';
import { USUAL_DROP, USUAL_PANELBOARD, USUAL_RACEWAY } from '../usual.ts';

/** What any branches to some chargers cost at the least, beside the feet that they go. Dollars. */
interface BranchFloor {
  /** A foot of raceway, of a circuit in its conduit, and of a conduit, worked off the ground. */
  readonly price: SharedPrice;
  /** Of these the share that what is worked on the ground costs at the least. */
  readonly low: number;
  /** And what lies in the ground. */
  readonly ground: number;
  /** Pieces that every circuit has, and its conductors' allowances. */
  readonly circuit: number;
  /** Pieces that every drop has, less the supports that the last conduit to it may do without. */
  readonly drop: number;
}

const FEET = ['raceway', 'conductor', 'grounding conductor', 'pilot conductor'];
const LINES = ['conductor', 'pilot conductor'];
const OF_CIRCUITS = ['breaker', 'test', 'wire connector'];
const OF_DROPS = ['cover', 'bonding pigtail'];
/** Both ends of the conduit that ends at a drop. */
const CONNECTORS = 2;
/** Conduit this short between boxes has no support, feet. */
const UNSUPPORTED = 2;
/** Feet that two trial branches differ by: so short that no drop of volts makes conductors thicker. */
const [NEAR, FAR] = [10, 20];
/** No more pieces alike than these for each circuit: more take less time each. */
const ALIKE = 40;

type Place = 'overhead' | 'underground';

/** Of what lies in the ground, feet. */
const DEEP = -2;

type Own = Pick<Charger, 'amps' | 'volts' | 'phases' | 'pilot'>;

/**
 * Prices under which no branches of chargers alike can be had: feet by the sizes that short branches take, one to as many as
 * share a conduit, with no couplings, bends, straps of their own, waste, or boxes where circuits part; pieces by the hours
 * of very many alike. What the list has no price for is taken from the invented one.
 * @param count of all chargers of the lot
 */
function branchFloor(rules: Rules, prices: PriceList, own: Own, count: number): BranchFloor {
  const alike = Math.max(1000, ALIKE * count);
  const { circuitsPerConduit, allowance } = rules;
  const foot = (circuits: number) => footOf(rules, prices, own, circuits);
  const one = foot(1);
  const slopes = Array.from({ length: circuitsPerConduit - 1 }, (_, i) => {
    const more = foot(i + 2);
    return more.conduits > 1.01 ? one.lines : (more.dollars - one.dollars) / (i + 1);
  });
  // Each circuit more in a conduit costs no less than this a foot, and one alone what it costs.
  const conductor = Math.min(one.dollars, one.lines, ...slopes.filter((slope) => slope > 0));
  const conduit = one.dollars - conductor;
  const inGround = Array.from({ length: circuitsPerConduit }, (_, i) => {
    const there = footOf(rules, prices, own, i + 1, 'underground');
    return (there.dollars * there.low) / Math.max(1e-9, conduit + conductor * (i + 1));
  });
  const rows = trial(rules, own, 1, NEAR);
  const each = (item: string): number =>
    rows.filter((row) => row.item === item).reduce((sum, row) => sum + row.quantity * unitPrice(prices, row, alike), 0);
  const connector = rows.find(({ item }) => item === 'connector');
  const hanger = rows.find(({ item }) => item === 'hanger');
  const spacing = supportSpacing(tablesOf(rules), USUAL_RACEWAY.overhead, '1').spacingFt;
  const trapeze =
    priceOf(prices, { item: 'trapeze', spec: '12 in', unit: 'each' }, alike, 0) +
    2 * priceOf(prices, { item: 'beam clamp', spec: '3/8 in', unit: 'each' }, alike, 0);
  const support = Math.min(trapeze, hanger ? unitPrice(prices, hanger, alike) : 0) / spacing;
  const sum = (items: readonly string[]): number => items.reduce((all, item) => all + each(item), 0);
  return {
    price: { raceway: support, conductor, conduit, circuitsPerConduit },
    low: one.low,
    ground: Math.min(one.low, ...inGround),
    circuit: sum(OF_CIRCUITS) + one.low * one.lines * (allowance.equipment + allowance.box),
    drop: sum(OF_DROPS) + CONNECTORS * (connector ? unitPrice(prices, connector, alike) : 0) - UNSUPPORTED * support,
  };
}

/** Dollars of a foot of a straight with so many circuits, all of it and the lines alone; conduits side by side. */
function footOf(rules: Rules, prices: PriceList, own: Own, circuits: number, place: Place = 'overhead') {
  const quantities = new Map<string, { readonly row: TakeoffRow; feet: number }>();
  for (const [feet, sign] of [
    [FAR, 1],
    [NEAR, -1],
  ] as const)
    for (const row of trial(rules, own, circuits, feet, place)) {
      if (!FEET.includes(row.item) || row.unit !== 'ft') continue;
      const known = quantities.get(`${row.item}\n${row.spec}`) ?? { row, feet: 0 };
      known.feet += (sign * row.quantity) / (FAR - NEAR);
      quantities.set(`${row.item}\n${row.spec}`, known);
    }
  let [dollars, lines, conduits, low] = [0, 0, 0, 1];
  for (const { row, feet } of quantities.values()) {
    const high = feetPrice(prices, row, true);
    if (high > 0) low = Math.min(low, feetPrice(prices, row, false) / high);
    // What waste adds to what is bought adds nothing here.
    const net = feet / (1 + wasteOf(rules, row.item));
    dollars += net * high;
    if (LINES.includes(row.item)) lines += net * high;
    if (row.item === 'raceway') conduits += net;
  }
  return { dollars, lines, conduits, low };
}

const wasteOf = ({ waste }: Rules, item: string): number => (item === 'raceway' ? waste.raceway : waste.conductor);

/** The takeoff of so many circuits along one straight, their boxes at its end. */
function trial(
  rules: Rules,
  own: Own,
  circuits: number,
  feet: number,
  place: Place = 'overhead',
): readonly TakeoffRow[] {
  const z = place === 'overhead' ? USUAL_DROP.elevation : DEEP;
  const { entryHeight: _, size, ...panel } = USUAL_PANELBOARD;
  return takeoffOf({
    rules,
    equipment: [{ id: 'E', kind: 'panelboard', ...panel, size: [...size], at: [0, 0], entry: [0, 0, z] }],
    raceways: [
      {
        id: 'R',
        path: [
          [0, 0, z],
          [feet, 0, z],
        ],
        method: USUAL_RACEWAY[place],
        place,
      },
    ],
    drops: Array.from(
      { length: circuits },
      (_unused, i): Drop => ({ id: `D${i}`, box: [feet - 0.01 * i, 0, z], cord: 20, restHeight: 3 }),
    ),
    chargers: Array.from({ length: circuits }, (_unused, i) => ({
      id: `C${i}`,
      drop: `D${i}`,
      stalls: [],
      from: 'E',
      ...own,
    })),
  });
}

type Priced = Pick<TakeoffRow, 'item' | 'spec' | 'unit'>;

/** Dollars of one of so many, worked at some height or on the ground. */
function priceOf(prices: PriceList, { item, spec, unit }: Priced, count: number, high: number, lift = 0): number {
  const row: TakeoffRow = { item, spec, unit, quantity: count, high, lift, basis: '', of: [], parts: [] };
  for (const list of [prices, INVENTED_LIST]) {
    const { cost, missing } = costOf([row], list, 0);
    if (missing.length === 0) return cost / count;
  }
  return 0;
}

/** Of pieces: on the ground, where they take least. */
const unitPrice = (prices: PriceList, row: Priced, alike: number): number => priceOf(prices, row, alike, 0);

/** Of a foot, from a ladder or a lift, whichever is less; or on the ground. */
const feetPrice = (prices: PriceList, row: Priced, isHigh: boolean): number =>
  isHigh
    ? Math.min(priceOf(prices, row, 1000, 1000), priceOf(prices, row, 1000, 1000, 1000))
    : priceOf(prices, row, 1000, 0);

/** Of a site: under whatever its chargers draw. */
export interface SiteFloor extends Pick<BranchFloor, 'circuit' | 'drop'> {
  readonly feet: FloorPrice;
}

/** The least of the floors of all kinds of chargers that a site has; null without any. */
export function siteFloor({ rules, chargers }: Site, prices: PriceList): SiteFloor | null {
  const kinds = new Map(
    chargers.map(({ amps, volts, phases, pilot }): [string, Own] => [
      [amps, volts, phases, pilot].join(' '),
      { amps, volts, phases, ...(pilot !== undefined && { pilot }) },
    ]),
  );
  const floors = [...kinds.values()].map((own) => branchFloor(rules, prices, own, chargers.length));
  if (floors.length === 0) return null;
  const least = (of: (floor: BranchFloor) => number): number => Math.max(0, Math.min(...floors.map(of)));
  return {
    feet: {
      price: {
        raceway: least(({ price }) => price.raceway),
        conductor: least(({ price }) => price.conductor),
        conduit: least(({ price }) => price.conduit),
        circuitsPerConduit: rules.circuitsPerConduit,
      },
      low: least(({ low }) => low),
      ground: least(({ ground }) => ground),
      high: rules.workHeight.ladder,
    },
    circuit: least(({ circuit }) => circuit),
    drop: least(({ drop }) => drop),
  };
}
