import { changedPlaces, copied } from '../../routing/lists/changed-places.ts';
import type { Charger } from '../../routing/site/site.ts';
import { LINES } from '../../routing/site/vocabulary.ts';
import type { PhasePair } from '../plan-shape.ts';
import {
  type BoxLoad,
  type BoxVolts,
  type BranchOhms,
  boxVolts,
  type Desk,
  newDesk,
  totalDropPercent,
} from './box-volts.ts';
import type { Seats } from './supply-draws.ts';
import type { Solved } from './sweep.ts';

/** What the voltages at the boxes were worked from. */
export interface BoxCase {
  readonly seats: Seats;
  readonly chargers: readonly Charger[];
  readonly powerFactor: number;
}

/** The supply as it was solved with everything on, and for whom: volts at any box are worked from this. */
export interface BoxSupply {
  readonly of: BoxCase;
  readonly solved: Solved;
}

interface Known {
  readonly of: BoxCase;
  readonly ohms: readonly (BranchOhms | null)[];
  readonly boxes: readonly (BoxVolts | null)[];
}

const known = new WeakMap<Solved, Known>();

/**
 * Volts at the box of each charger, in the order of the chargers; null where it has no branch. While the state of the
 * supply is the same, only boxes whose own branch changed are worked again, and the list is the last one where none did.
 */
export function boxesOf(
  of: BoxCase,
  solved: Solved,
  ohms: readonly (BranchOhms | null)[],
): readonly (BoxVolts | null)[] {
  const last = known.get(solved);
  const same = last !== undefined && last.of.seats === of.seats && last.of.powerFactor === of.powerFactor;
  const desk = newDesk();
  const boxes = same
    ? changed(last, solved, ohms)
    : of.chargers.map((_, i) => boxOf(of, solved, i, ohms[i] ?? null, desk));
  known.set(solved, { of, ohms, boxes });
  return boxes;
}

/** Volts at the box of the charger at one place, through a branch of so many ohms: the same as in the list of all. */
export const boxAt = ({ of, solved }: BoxSupply, place: number, ohms: BranchOhms): BoxVolts =>
  boxVolts(ohms, solved.volts, of.seats.bus[place]!, loadAt(of, solved, place));

function changed(last: Known, solved: Solved, ohms: readonly (BranchOhms | null)[]): readonly (BoxVolts | null)[] {
  const places = changedPlaces(ohms, last.ohms);
  if (places.length === 0) return last.boxes;
  const boxes = last.boxes.slice();
  const desk = newDesk();
  for (const i of places) boxes[i] = boxOf(last.of, solved, i, ohms[i] ?? null, desk);
  return copied(boxes, last.boxes, places);
}

const boxOf = (of: BoxCase, solved: Solved, i: number, ohms: BranchOhms | null, desk: Desk): BoxVolts | null =>
  ohms === null ? null : boxVolts(ohms, solved.volts, of.seats.bus[i]!, loadAt(of, solved, i), desk);

/** The total drop to the box of the charger at a place, percent, through a branch of so many ohms. */
export const totalDropAt = (of: BoxCase, solved: Solved, i: number, r: number, x: number, desk: Desk): number =>
  totalDropPercent(r, x, solved.volts, of.seats.bus[i]!, loadAt(of, solved, i), desk);

const loadAt = ({ seats, powerFactor }: BoxCase, solved: Solved, i: number): BoxLoad => ({
  lines: LINES[seats.lines[i]!] as PhasePair,
  amps: seats.amps[i]! * solved.share[seats.bus[i]!]!,
  powerFactor,
  nominal: seats.nominal[i]!,
});
