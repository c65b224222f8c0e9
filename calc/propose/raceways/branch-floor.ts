import type { FloorPrice } from '../../../routing/propose/raceways/least-under.ts';
import type { Charger, Rules, Site } from '../../../routing/site/site.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { STICK } from '../../prices/spec.ts';
import { tablesOf } from '../../tables/editions.ts';
import { supportSpacing } from '../../tables/raceway-of.ts';
import { USUAL_RACEWAY } from '../usual.ts';
import {
  type FloorCharger,
  floorFoot,
  leastPrice,
  linesFoot,
  type PiecePrices,
  piecePrices,
  TRIED_FEET,
  trialBranches,
  WIDER,
} from './floor-prices.ts';

/** What any branches to chargers alike cost at the least in the bid, beside the feet that they go. Dollars. */
interface BranchFloor {
  /** A foot, off the ground, of the line conductors of a circuit, and of what so many share beside them: a conduit and what is in it. */
  readonly lines: number;
  readonly shared: readonly number[];
  /** A foot of what hangs: of each raceway, and of each conduit there. */
  readonly raceway: number;
  readonly hung: number;
  /** Couplings of a foot of conduit. */
  readonly coupling: number;
  /** Of these feet the share that what is worked on the ground costs at the least. */
  readonly low: number;
  /** And what lies in the ground. */
  readonly ground: number;
  /** Pieces that every circuit has, and its conductors' allowances. */
  readonly circuit: number;
  /** Pieces that every drop has, on the ground and up, less what the last conduit to it may do without. */
  readonly drop: { readonly low: number; readonly high: number };
}

const OF_CIRCUITS = ['breaker', 'test', 'wire connector', 'label'];
const OF_DROPS = ['cover', 'bonding pigtail'];
/** Conduit this short between boxes has no support, feet. */
const UNSUPPORTED = 2;
/** No more pieces alike than these for each circuit: more take less time each. */
const ALIKE = 40;

/**
 * Prices under which no branches of chargers alike can be had: feet with their waste by the sizes that short branches take,
 * one to as many as share a conduit, with no bends, straps of legs, or boxes where circuits part; pieces by the hours of
 * very many alike. What the list has no price for is taken from the invented one.
 * @param count of all chargers of the lot
 */
function branchFloor(rules: Rules, prices: PriceList, own: FloorCharger, count: number): BranchFloor {
  const alike = Math.max(1000, ALIKE * count);
  const { circuitsPerConduit, allowance } = rules;
  const foot = Array.from({ length: circuitsPerConduit }, (_, i) => floorFoot(rules, prices, own, i + 1));
  const one = foot[0]!;
  const inGround = foot.map((here, i) => {
    const there = floorFoot(rules, prices, own, i + 1, 'underground');
    return (there.dollars * there.low) / Math.max(1e-9, here.dollars);
  });
  const rows = trialBranches(rules, own, 1, TRIED_FEET);
  const each = (item: string): number =>
    rows
      .filter((row) => row.item === item)
      .reduce((sum, row) => sum + row.quantity * leastPrice(prices, row, alike), 0);
  const piece = (item: string, spec: string): PiecePrices => piecePrices(prices, { item, spec, unit: 'each' }, alike);
  const conduit = rows.find(({ item }) => item === 'connector')?.spec ?? '*';
  const connector = piece('connector', conduit);
  const strap = piece('strap', conduit);
  const coupling = piece('coupling', conduit);
  const hanger = piece('hanger', rows.find(({ item }) => item === 'hanger')?.spec ?? '*');
  const [bar, clamp] = [piece('trapeze', '12 in'), piece('beam clamp', '3/8 in')];
  const trapeze = bar.high + 2 * clamp.high;
  const spacing = supportSpacing(tablesOf(rules), USUAL_RACEWAY.overhead, '1').spacingFt;
  // One conduit has a hanger, several a trapeze with a strap each: no less than this, and this for each conduit more.
  const more = Array.from(
    { length: Math.max(0, count - 1) },
    (_, i) => (trapeze + (i + 2) * strap.high - hanger.high) / (i + 1),
  );
  const single = Math.min(hanger.high, trapeze + strap.high);
  const hung = Math.max(0, Math.min(single, ...more));
  // A conduit of several sticks has a coupling less than sticks, which its connectors are worth.
  const joint = Math.min(coupling.high, 2 * connector.low);
  const sum = (items: readonly string[]): number => items.reduce((all, item) => all + each(item), 0);
  const without = UNSUPPORTED * (single / spacing) + joint;
  return {
    lines: one.lines,
    shared: foot.flatMap(({ dollars, lines, conduits }) => (conduits > 1.01 ? [] : [dollars - lines])),
    raceway: (single - hung) / spacing,
    hung: hung / spacing,
    coupling: joint / STICK,
    low: Math.min(
      one.low,
      ...[hanger, bar, clamp, strap, coupling].map(({ low, high }) => (high > 0 ? low / high : 1)),
    ),
    ground: Math.min(one.low, ...inGround),
    circuit: sum(OF_CIRCUITS) + one.low * one.lines * (allowance.equipment + allowance.box),
    drop: {
      low: sum(OF_DROPS) + 2 * connector.low - without,
      high:
        OF_DROPS.flatMap((item) => rows.filter((row) => row.item === item)).reduce(
          (all, row) => all + row.quantity * piecePrices(prices, row, alike).high,
          0,
        ) +
        connector.low +
        connector.high -
        without,
    },
  };
}

/** Of a site: under whatever its chargers draw. */
export interface SiteFloor {
  readonly feet: FloorPrice;
  /** What a foot of the conductors to a charger costs beyond those, on a way of so many feet or more: by its limit of drop. */
  readonly over: (charger: FloorCharger & Pick<Charger, 'branchDrop'>, feet: number) => number;
  readonly circuit: number;
  /** Of a drop whose box is so high, feet. */
  readonly drop: (elevation: number) => number;
}

/** The least of the floors of all kinds of chargers that a site has; null without any. */
export function siteFloor({ rules, chargers }: Site, prices: PriceList): SiteFloor | null {
  const kindOf = ({ amps, volts, phases, pilot }: FloorCharger): string => [amps, volts, phases, pilot].join(' ');
  const kinds = new Map(
    chargers.map((one): [string, FloorCharger] => {
      const { amps, volts, phases, pilot } = one;
      return [kindOf(one), { amps, volts, phases, ...(pilot !== undefined && { pilot }) }];
    }),
  );
  const floors = [...kinds.values()].map((own) => branchFloor(rules, prices, own, chargers.length));
  if (floors.length === 0) return null;
  const least = (of: (floor: BranchFloor) => number): number => Math.max(0, Math.min(...floors.map(of)));
  // What so many circuits share in a conduit goes up by no less than `step` for each more.
  const shared = Array.from({ length: rules.circuitsPerConduit }, (_, i) =>
    Math.min(...floors.map((floor) => floor.shared[i] ?? Number.POSITIVE_INFINITY)),
  );
  const first = shared[0]!;
  const steps = shared.slice(1).map((more, i) => (more - first) / (i + 1));
  const step = Math.min(first, ...steps.filter(Number.isFinite));
  const rises = Number.isFinite(step) && step > 0 && steps.length > 0;
  const lines = least((floor) => floor.lines);
  const low = least((floor) => floor.low);
  const known = new Map<string, number>();
  return {
    feet: {
      price: {
        raceway: least(({ raceway }) => raceway),
        conductor: lines + (rises ? step : 0),
        conduit: Math.max(0, rises ? first - step : Math.min(...shared)),
        circuitsPerConduit: rules.circuitsPerConduit,
      },
      hung: least(({ hung, coupling }) => hung + coupling),
      low,
      ground: least(({ ground }) => ground),
      high: rules.workHeight.ladder,
    },
    over: ({ amps, volts, phases, pilot, branchDrop }, feet) => {
      // A tap may spare some of the way at either end.
      const way = Math.max(0, Math.floor((feet - 2 * rules.tapLimit) / WIDER));
      const own = {
        ...{ amps, volts, phases },
        ...(pilot !== undefined && { pilot }),
        ...(branchDrop !== undefined && { branchDrop }),
      };
      const key = `${kindOf(own)} ${branchDrop} ${way}`;
      if (!known.has(key)) known.set(key, linesFoot(rules, prices, own, WIDER * way, low));
      return Math.max(0, known.get(key)! - lines);
    },
    circuit: least(({ circuit }) => circuit),
    drop: (elevation) => least(({ drop }) => (elevation > rules.workHeight.ladder ? drop.high : drop.low)),
  };
}
