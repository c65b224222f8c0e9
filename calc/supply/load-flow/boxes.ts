import { changedPlaces, copied } from '../../../routing/lists/changed-places.ts';
import type { Charger } from '../../../routing/site/site.ts';
import { LINES } from '../../../routing/site/vocabulary.ts';
import type { BranchOhms } from '../../branches/branch-ohms.ts';
import { branchDrop } from '../../circuits/line-drop.ts';
import type { PhasePair } from '../../plan-file.ts';
import { ratedVoltsOf } from '../tree/rated-volts.ts';
import { type BoxLoad, type BoxVolts, boxVolts, type Desk, newDesk, totalDropPercent } from './box-volts.ts';
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

interface Known {
  readonly of: BoxCase;
  readonly ohms: readonly (BranchOhms | null)[];
  readonly boxes: readonly (BoxVolts | null)[];
}

const known = new WeakMap<SupplyState, Known>();

/**
 * Volts at the box of each charger, in the order of the chargers; null where it has no branch. While the state of the
 * supply is the same, only boxes whose own branch changed are worked again, and the list is the last one where none did.
 */
export function boxesOf(
  of: BoxCase,
  state: SupplyState,
  ohms: readonly (BranchOhms | null)[],
): readonly (BoxVolts | null)[] {
  const last = known.get(state);
  const same = last !== undefined && last.of.seats === of.seats && last.of.powerFactor === of.powerFactor;
  const desks = newDesks();
  const boxes = same
    ? changed(last, state, ohms)
    : of.chargers.map((_, i) => maybeBox(of, state, i, ohms[i] ?? null, desks));
  known.set(state, { of, ohms, boxes });
  return boxes;
}

/** Scratch for each way in which a box is worked: what feeds the last one is kept there for the next. */
export interface Desks {
  readonly full: Desk;
  readonly dark: Desk;
  readonly rated: Desk;
}

export const newDesks = (): Desks => ({ full: newDesk(), dark: newDesk(), rated: newDesk() });

/** Volts at the box of the charger at one place, through a branch of so many ohms: the same as in the list of all. */
export const boxAt = ({ of, state }: BoxSupply, place: number, ohms: BranchOhms): BoxVolts =>
  boxOf(of, state, place, ohms, newDesks());

function changed(last: Known, state: SupplyState, ohms: readonly (BranchOhms | null)[]): readonly (BoxVolts | null)[] {
  const places = changedPlaces(ohms, last.ohms);
  if (places.length === 0) return last.boxes;
  const boxes = last.boxes.slice();
  const desks = newDesks();
  for (const i of places) boxes[i] = maybeBox(last.of, state, i, ohms[i] ?? null, desks);
  return copied(boxes, last.boxes, places);
}

const maybeBox = (
  of: BoxCase,
  state: SupplyState,
  i: number,
  ohms: BranchOhms | null,
  desks: Desks,
): BoxVolts | null => (ohms === null ? null : boxOf(of, state, i, ohms, desks));

function boxOf(of: BoxCase, state: SupplyState, i: number, ohms: BranchOhms, desks: Desks): BoxVolts {
  const { full } = state;
  const box = boxVolts(ohms, full.volts, of.seats.bus[i]!, loadAt(of, full, i), desks.full);
  return { ...box, worstDropPercent: worstDropAt(of, state, i, ohms.r, ohms.x, desks) };
}

/**
 * The most that a charger's box may be below nominal, percent, through a branch of so many ohms: the charger at its rating,
 * the rest of what is managed with it at the ceiling, with generation or without. No less than its branch drops by itself.
 */
export function worstDropAt(of: BoxCase, state: SupplyState, i: number, r: number, x: number, desks: Desks): number {
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
  desk: Desk,
  rated: Desk,
): number {
  const bus = of.seats.bus[i]!;
  if (solved.share[bus] === 1) return totalDropPercent(r, x, solved.volts, bus, load, desk);
  const volts = ratedVoltsOf(of.buses, of.seats, solved, of.powerFactor).at(i);
  return totalDropPercent(r, x, volts, 0, load, rated);
}

const loadAt = ({ seats, powerFactor }: BoxCase, solved: Solved, i: number): BoxLoad => ({
  lines: LINES[seats.lines[i]!] as PhasePair,
  amps: seats.amps[i]! * solved.share[seats.bus[i]!]!,
  powerFactor,
  nominal: seats.nominal[i]!,
});
