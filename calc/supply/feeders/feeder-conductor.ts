import { keptByKey } from '../../../routing/kept/kept.ts';
import type { Feeder, Rules } from '../../../routing/site/site.ts';
import { BY_A_HAIR, grounding } from '../../circuits/grounding.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { circularMils } from '../../tables/conductor-of.ts';
import { CONDUCTOR_SIZES, isConductorSize } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { feederAmpacity } from './feeder-ampacity.ts';

/** Larger conductors are run in parallel sets instead. Common practice, no source. */
const LARGEST = '600';
const MOST_SETS = 16;

/** What conductors are made of, and the terminals that they end at. */
type Make = Pick<Rules, 'metal' | 'insulation' | 'terminalC'>;

/**
 * Conductors that carry a feeder's breaker, three to a raceway, in some ambient, in as few parallel sets as keep each at
 * 600 kcmil or less. Voltage drop, and what it feeds, are checked where the plan is made.
 * RangeError for a breaker that is not over 0, or that no 16 sets carry.
 * @param ambientC where they lie
 */
export function feederConductor(
  tables: CodeTables,
  breakerAmps: number,
  make: Make,
  ambientC: number,
): Feeder['conductor'] {
  const { metal, insulation } = make;
  for (let sets = 1; breakerAmps > 0 && sets <= MOST_SETS; sets++) {
    const size = leastOf(tables, breakerAmps, make, ambientC, sets, LARGEST);
    if (size !== undefined) return { size, metal, sets, insulation };
  }
  throw new RangeError(`no feeder conductors for a breaker of ${breakerAmps} A`);
}

/** Ambient, °C, of a feeder of which it is not known yet where it lies: of the warmest place of the site. */
export const unplacedAmbient = ({ placeAmbientC: { overhead, surface, underground } }: Rules): number =>
  Math.max(overhead, surface, underground);

/** Smallest size that carries a breaker in so many sets; undefined where none does. Of a large lot's feeders most are alike. */
const leastOf = keptByKey(
  (breakerAmps: number, { metal, insulation, terminalC }: Make, ambientC: number, sets: number, largest?: string) =>
    [breakerAmps, metal, insulation, terminalC, ambientC, sets, largest].join(),
  (
    tables: CodeTables,
    breakerAmps: number,
    { metal, insulation, terminalC }: Make,
    ambientC: number,
    sets: number,
    largest?: string,
  ): string | undefined => {
    const mils = (size: string): number => circularMils(tables, size);
    return CONDUCTOR_SIZES.find(
      (size) =>
        (largest === undefined || mils(size) <= mils(largest)) &&
        (sets === 1 || mils(size) >= mils(tables.least.parallel)) &&
        (feederAmpacity(tables, { size, metal, sets, insulation }, ambientC, terminalC)?.ampacity ?? 0) >= breakerAmps,
    );
  },
);

/**
 * The conductors that the breaker of a standing feeder asks for, for 250.122(B): the smallest in as many sets as it has,
 * or the fewest sets that a new one would have, whichever has more circular mils. Null where the feeder has no more than
 * those, its sizes are not the tables', or no size carries the breaker.
 */
function feederNeeded(
  tables: CodeTables,
  { breakerAmps, conductor }: Feeder,
  terminalC: Rules['terminalC'],
  ambientC: number,
): { readonly size: string; readonly sets: number } | null {
  const { size, sets, metal, insulation } = conductor;
  if (!isConductorSize(size) || !(breakerAmps > 0)) return null;
  const make = { metal, insulation, terminalC } as Make;
  const area = (one: { readonly size: string; readonly sets: number }): number =>
    circularMils(tables, one.size) * one.sets;
  const needed: { readonly size: string; readonly sets: number }[] = [];
  const alike = leastOf(tables, breakerAmps, make, ambientC, sets);
  if (alike !== undefined) needed.push({ size: alike, sets });
  for (let few = 1; few < sets; few++) {
    const fewer = leastOf(tables, breakerAmps, make, ambientC, few, LARGEST);
    if (fewer === undefined) continue;
    needed.push({ size: fewer, sets: few });
    break;
  }
  const most = needed.sort((a, b) => area(b) - area(a))[0];
  return most === undefined || area(conductor) <= area(most) ? null : most;
}

/**
 * Grounding conductor in each raceway of a feeder, full size in each of parallel sets (250.122(F)), grown with conductors
 * that are larger than its breaker asks for where they lie (250.122(B)).
 */
export function feederGrounding(
  tables: CodeTables,
  feeder: Feeder,
  terminalC: Rules['terminalC'],
  ambientC: number,
  tell: Tell = SILENT,
): { readonly size: string } {
  const { breakerAmps, conductor } = feeder;
  const { size, metal, sets } = conductor;
  if (!isConductorSize(size)) return { size };
  const needed = feederNeeded(tables, feeder, terminalC, ambientC);
  return grounding(
    tables,
    {
      breakerAmps,
      metal,
      conductor: size,
      sets,
      conductorNeeded: needed?.size,
      setsNeeded: needed?.sets,
      slack: BY_A_HAIR,
    },
    tell,
  );
}
