import { kept } from '../../../routing/kept/kept.ts';
import { keptEach } from '../../../routing/kept/kept-list.ts';
import { LINES } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger } from '../../../routing/site/site.ts';
import type { BranchOhms } from '../../branches/equipment-branches.ts';
import { branchDrop } from '../../circuits/line-drop.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { ratedVoltsOf } from '../tree/rated-volts.ts';
import { type BoxLoad, type BoxScratch, type BoxVolts, boxVolts, newDesk, totalDropPercent } from './box-volts.ts';
import type { Seats } from './seats.ts';
import type { SupplyState } from './supply-solve.ts';
import type { Bus, Solved } from './sweep.ts';

/** What the voltages at the boxes were worked from. */
export interface BoxCase {
  readonly seats: Seats;
  readonly chargers: readonly Charger[];
  readonly powerFactor: number;
  readonly buses: readonly Bus[];
}

/** The supply as it was solved with everything on, and for whom: volts at any box are worked from this. */
export interface BoxSupply {
  readonly of: BoxCase;
  readonly state: SupplyState;
}

/** One for a supply as it was solved, so that what is worked from it is known by it. */
export const boxSupplyOf = kept(
  (
    state: SupplyState,
    seats: Seats,
    chargers: readonly Charger[],
    buses: readonly Bus[],
    powerFactor: number,
  ): BoxSupply => ({ of: { seats, chargers, buses, powerFactor }, state }),
);

/** Scratch for each way in which a box is worked: what feeds the last one stands there for the next. */
interface Desks {
  readonly full: BoxScratch;
  readonly dark: BoxScratch;
  readonly rated: BoxScratch;
}

const desksOf = kept((_: BoxSupply): Desks => ({ full: newDesk(), dark: newDesk(), rated: newDesk() }));

/** Volts at the box of the charger at one place, through a branch of so many ohms. */
export const boxAt = kept(
  (ohms: BranchOhms, supply: BoxSupply, place: number): BoxVolts =>
    boxOf(supply.of, supply.state, place, ohms, desksOf(supply)),
);

/** The places of chargers, to be gone through beside what each has. */
export const placesOf = kept((chargers: readonly Charger[]): readonly number[] => chargers.map((_, i) => i));

const boxes = keptEach(
  ([ohms, place]: readonly [BranchOhms | null, number], [supply]: readonly [BoxSupply]): BoxVolts | null =>
    ohms === null ? null : boxAt(ohms, supply, place),
);

/** The same at every box, in the order of the chargers; null where one has no branch. */
export const boxVoltages = (supply: BoxSupply, ohms: readonly (BranchOhms | null)[]): readonly (BoxVolts | null)[] =>
  boxes([ohms, placesOf(supply.of.chargers)], [supply]);

const percents = keptEach(
  (
    [ohms, places]: readonly [readonly (BranchOhms | null)[], readonly number[]],
    [supply]: readonly [BoxSupply],
  ): readonly number[] => {
    const { of, state } = supply;
    const desks = desksOf(supply);
    return ohms.map((one, i) => (one === null ? 0 : worstDropAt(of, state, places[i]!, one.r, one.x, desks)));
  },
);

/**
 * Worst percent from nominal to each box, 0 where one has no branch: of the chargers of each piece of equipment, as `ohms`
 * are, with their places among all.
 */
export const dropPercents = (
  supply: BoxSupply,
  ohms: readonly (readonly (BranchOhms | null)[])[],
  places: readonly (readonly number[])[],
): readonly (readonly number[])[] => percents([ohms, places], [supply]);

function boxOf(of: BoxCase, state: SupplyState, i: number, ohms: BranchOhms, desks: Desks): BoxVolts {
  const { full } = state;
  const box = boxVolts(ohms, full.volts, of.seats.bus[i]!, loadAt(of, full, i), desks.full);
  return { ...box, worstDropPercent: worstDropAt(of, state, i, ohms.r, ohms.x, desks) };
}

/**
 * The most that a charger's box may be below nominal, percent, through a branch of so many ohms: the charger at its rating,
 * the rest of what is managed with it at the ceiling, with generation or without. No less than its branch drops by itself.
 */
function worstDropAt(of: BoxCase, state: SupplyState, i: number, r: number, x: number, desks: Desks): number {
  const { seats, powerFactor } = of;
  const [lines, amps, nominal] = [LINES[seats.lines[i]!] as PhasePair, seats.amps[i]!, seats.nominal[i]!];
  const load = { lines, amps, powerFactor, nominal };
  const { dropPercent: branch } = branchDrop({
    phases: lines === 'ABC' ? 3 : 1,
    volts: nominal,
    amps,
    r,
    x,
    powerFactor,
  });
  const { full, withoutGeneration: dark } = state;
  const worst = Math.max(branch, dropIn(of, full, i, r, x, load, desks.full, desks.rated));
  return dark === null ? worst : Math.max(worst, dropIn(of, dark, i, r, x, load, desks.dark, desks.rated));
}

function dropIn(
  of: BoxCase,
  solved: Solved,
  i: number,
  r: number,
  x: number,
  load: BoxLoad,
  desk: BoxScratch,
  rated: BoxScratch,
): number {
  const bus = of.seats.bus[i]!;
  if (solved.share[bus] === 1) return totalDropPercent(r, x, solved.volts, bus, load, desk);
  const volts = ratedVoltsOf(solved, of.buses, of.seats, of.powerFactor).at(i);
  return totalDropPercent(r, x, volts, 0, load, rated);
}

const loadAt = ({ seats, powerFactor }: BoxCase, solved: Solved, i: number): BoxLoad => ({
  lines: LINES[seats.lines[i]!] as PhasePair,
  amps: seats.amps[i]! * solved.share[seats.bus[i]!]!,
  powerFactor,
  nominal: seats.nominal[i]!,
});
