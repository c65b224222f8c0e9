import { kept } from '../../../routing/kept/kept.ts';
import type { Equipment, Feeder, Rules, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { GROUND_WORK } from '../../takeoff/systems.ts';
import { worthOfRows } from '../bid-worth.ts';
import { USUAL_CHARGER, USUAL_DROP, USUAL_PANELBOARD, USUAL_RACEWAY } from '../usual.ts';

/** Dollars in the bid of a piece of equipment that is fed: itself with what goes with it, a foot of its feeder, and of the trench. */
export interface FedPrice {
  readonly itself: number;
  readonly feeder: number;
  readonly trench: number;
}

/** Feet that two trial sites differ by. */
const FAR = 200;
const NEAR = 20;
const DEEP = -2;

/**
 * What a piece of equipment costs with its feeder in the ground: the prices of the plans of two sites that have nothing else,
 * nearer and farther from what feeds it. What the list has no price for is taken from the invented one.
 */
export function fedPrice(
  rules: Rules,
  prices: PriceList,
  source: Pick<Equipment, 'volts' | 'phases'>,
  piece: Omit<Equipment, 'id' | 'at' | 'entry' | 'rotation'>,
  { conductor, breakerAmps }: Pick<Feeder, 'conductor' | 'breakerAmps'>,
): FedPrice {
  const at = (feet: number): { readonly all: number; readonly ground: number } => {
    const rows = takeoffOf({
      rules,
      equipment: [
        {
          id: 'U',
          kind: 'source',
          volts: source.volts ?? USUAL_PANELBOARD.volts,
          phases: source.phases ?? 3,
          at: [0, 0],
          size: [2, 2, 2],
          entry: [0, 0, 3],
        },
        { ...piece, id: 'E', at: [feet, 0], entry: [feet, 0, 3] },
      ],
      feeders: [{ id: 'F', from: 'U', to: 'E', conductor: { ...conductor, metal: conductor.metal }, breakerAmps }],
      raceways: [
        {
          id: 'R',
          path: [
            [0, 0, 3],
            [0, 0, DEEP],
            [feet, 0, DEEP],
            [feet, 0, 3],
          ],
          method: USUAL_RACEWAY.underground,
          place: 'underground',
        },
      ],
    });
    return {
      all: worthOfRows(rows, prices),
      ground: worthOfRows(
        rows.filter(({ item }) => GROUND_WORK.includes(item)),
        prices,
      ),
    };
  };
  const [near, far] = [at(NEAR), at(FAR)];
  const slope = (a: number, b: number): number => (b - a) / (FAR - NEAR);
  const trench = slope(near.ground, far.ground);
  const whole = slope(near.all, far.all);
  return { itself: near.all - NEAR * whole, feeder: whole - trench, trench };
}

/** What a foot of trench for a few branches costs, with all the work that goes with one: dollars in the bid. */
export const trenchFootPrice = kept((rules: Rules, prices: PriceList): number => {
  const { volts, phases, size } = USUAL_PANELBOARD;
  const piece = { kind: 'panelboard', size: [...size], volts, phases } as const;
  return fedPrice(rules, prices, { volts, phases }, piece, SMALL_FEEDER).trench;
});

/** As wide a trench as a few branches want. */
const SMALL_FEEDER: Pick<Feeder, 'conductor' | 'breakerAmps'> = {
  conductor: { size: '3', metal: 'copper', sets: 1, insulation: 'THWN-2' },
  breakerAmps: 100,
};

/** Of a trial branch way, so that conduits are shared as usual. */
const CIRCUITS = 6;

/** What a foot more to a branch costs, where six go the same way overhead: the prices of two plans again. Dollars in the bid. */
export function branchFootPrice(rules: Rules, prices: PriceList): number {
  const z = USUAL_DROP.elevation;
  const { entryHeight, size, ...panel } = USUAL_PANELBOARD;
  const at = (feet: number): number =>
    worthOfRows(
      takeoffOf({
        rules,
        equipment: [{ id: 'E', kind: 'panelboard', ...panel, size: [...size], at: [0, 0], entry: [0, 0, entryHeight] }],
        raceways: [
          {
            id: 'R',
            path: [
              [0, 0, entryHeight],
              [0, 0, z],
              [feet + 2 * CIRCUITS, 0, z],
            ],
            method: USUAL_RACEWAY.overhead,
            place: 'overhead',
          },
        ],
        drops: Array.from({ length: CIRCUITS }, (_, i) => ({
          id: `D${i}`,
          box: [feet + 2 * (i + 1), 0, z] as const,
          cord: 20,
          restHeight: 3,
        })),
        chargers: Array.from({ length: CIRCUITS }, (_, i) => ({
          id: `C${i}`,
          drop: `D${i}`,
          stalls: [],
          from: 'E',
          volts: panel.volts,
          ...USUAL_CHARGER,
        })),
      }),
      prices,
    );
  return (at(FAR) - at(NEAR)) / (FAR - NEAR) / CIRCUITS;
}

type Trial = Pick<SiteFile, 'equipment' | 'feeders' | 'raceways' | 'drops' | 'chargers'> & { readonly rules: Rules };

/** The takeoff of a site in feet, by the rules of another. */
export function takeoffOf({ rules, ...lists }: Trial): readonly TakeoffRow[] {
  const site = toSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'trial', ...lists });
  return plan({ ...site, rules }).takeoff;
}
