import type { Charger, Drop, Rules } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { conductorSpec } from '../../prices/spec.ts';
import { tablesOf } from '../../tables/editions.ts';
import { worthOfRows } from '../bid-worth.ts';
import { takeoffOf } from '../panels/trial-price.ts';
import { USUAL_DROP, USUAL_PANELBOARD, USUAL_RACEWAY } from '../usual.ts';

const FEET = ['raceway', 'conductor', 'grounding conductor', 'pilot conductor'];

const LINES = ['conductor', 'pilot conductor'];

/** Feet that two trial branches differ by: so short that no drop of volts makes conductors thicker. */
export const TRIED_FEET = 10;
const FAR = 20;

type Place = 'overhead' | 'underground';

/** Of what lies in the ground, feet. */
const DEEP = -2;

/** What a charger draws, which its branch is sized by. */
export type FloorCharger = Pick<Charger, 'amps' | 'volts' | 'phases' | 'pilot'>;

/** Dollars of a foot of a straight with so many circuits, waste in: all of it and the lines alone; conduits side by side. */
export function floorFoot(
  rules: Rules,
  prices: PriceList,
  own: FloorCharger,
  circuits: number,
  place: Place = 'overhead',
) {
  const quantities = new Map<string, { readonly row: TakeoffRow; feet: number }>();
  for (const [feet, sign] of [
    [FAR, 1],
    [TRIED_FEET, -1],
  ] as const)
    for (const row of trialBranches(rules, own, circuits, feet, place)) {
      if (!FEET.includes(row.item) || row.unit !== 'ft') continue;
      const known = quantities.get(`${row.item}\n${row.spec}`) ?? { row, feet: 0 };
      known.feet += (sign * row.quantity) / (FAR - TRIED_FEET);
      quantities.set(`${row.item}\n${row.spec}`, known);
    }
  let [dollars, lines, conduits, low] = [0, 0, 0, 1];
  for (const { row, feet } of quantities.values()) {
    const high = feetPrice(prices, row, true);
    if (high > 0) low = Math.min(low, feetPrice(prices, row, false) / high);
    dollars += feet * high;
    if (LINES.includes(row.item)) lines += feet * high;
    if (row.item === 'raceway') conduits += feet / (1 + rules.waste.raceway);
  }
  return { dollars, lines, conduits, low };
}

/** Feet at which wider conductors are looked for; those of a longer way are no narrower. */
export const WIDER = 5;

/**
 * Dollars of a foot of the line conductors of one branch of so many feet, off the ground, as wide as its limit of drop has
 * them: no wider size that costs less is taken for more.
 * @param low share of these that the same costs on the ground at the least
 */
export function linesFoot(
  rules: Rules,
  prices: PriceList,
  own: FloorCharger & Pick<Charger, 'branchDrop'>,
  feet: number,
  low: number,
): number {
  const { allowance } = rules;
  const sizes = tablesOf(rules).conductors.rows.map(({ size }) => size);
  const long = Math.max(TRIED_FEET, WIDER * Math.floor(feet / WIDER));
  return trialBranches(rules, own, 1, long)
    .filter(({ item }) => LINES.includes(item))
    .reduce((sum, row) => {
      const had = sizes.findIndex((size) => row.spec.startsWith(conductorSpec(size, rules.metal, rules.insulation)));
      const kinds =
        had < 0 || row.item !== 'conductor'
          ? [row]
          : sizes.slice(had).map((size) => ({
              ...row,
              spec: row.spec.replace(
                conductorSpec(sizes[had]!, rules.metal, rules.insulation),
                conductorSpec(size, rules.metal, rules.insulation),
              ),
            }));
      const foot = Math.min(
        ...kinds.flatMap((kind) => [feetPrice(prices, kind, true), feetPrice(prices, kind, false) / low]),
      );
      return sum + (row.quantity / (long + allowance.equipment + allowance.box)) * foot;
    }, 0);
}

/** The takeoff of so many circuits along one straight, their boxes at its end. */
export function trialBranches(
  rules: Rules,
  own: FloorCharger & Pick<Charger, 'branchDrop'>,
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

/** Dollars in the bid of one of so many, worked at some height or on the ground. */
const priceOf = (prices: PriceList, { item, spec, unit }: Priced, count: number, high: number, lift = 0): number =>
  worthOfRows([{ item, spec, unit, quantity: count, high, lift, basis: '', of: [], parts: [] }], prices) / count;

/** Of pieces: on the ground, where they take least. */
export const leastPrice = (prices: PriceList, row: Priced, alike: number): number => priceOf(prices, row, alike, 0);

/** Of one piece, on the ground and from a ladder or a lift, whichever is less. */
export interface PiecePrices {
  readonly low: number;
  readonly high: number;
}

export const piecePrices = (prices: PriceList, row: Priced, alike: number): PiecePrices => ({
  low: leastPrice(prices, row, alike),
  high: Math.min(priceOf(prices, row, alike, alike), priceOf(prices, row, alike, alike, alike)),
});

/** Of a foot, from a ladder or a lift, whichever is less; or on the ground. */
const feetPrice = (prices: PriceList, row: Priced, isHigh: boolean): number =>
  isHigh
    ? Math.min(priceOf(prices, row, 1000, 1000), priceOf(prices, row, 1000, 1000, 1000))
    : priceOf(prices, row, 1000, 0);
