import { kept } from '../../routing/kept/kept.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';

/** What there is in the branches, in numbers. */
export interface BranchCounts {
  readonly circuits: number;
  /** Circuits that carry a pilot. */
  readonly pilots: number;
  /** Chargers with a run that no conductor of the tables will do for. */
  readonly unsized: number;
  /** Conduits, trays left out. */
  readonly conduits: number;
  /** Conduits with three lines and nothing else that carries current. */
  readonly threeLines: number;
  /** Conduits of a kind that grows and shrinks along its length: neither flexible nor a tray. */
  readonly stiff: number;
  /** Boxes in the ground, those that several pieces of equipment may come to by what each brings. */
  readonly buried: number;
  /** Boxes above grade, likewise. */
  readonly standing: number;
}

const NONE: BranchCounts = {
  circuits: 0,
  pilots: 0,
  unsized: 0,
  conduits: 0,
  threeLines: 0,
  stiff: 0,
  buried: 0,
  standing: 0,
};

const ownCounts = kept(({ circuits, homeRuns, unsized, boxCount, buried, shared }: EquipmentBranches): BranchCounts => {
  let [own, pilots, counted, threeLines, stiff] = [0, 0, 0, 0, 0];
  for (const circuit of circuits) {
    if (circuit === null) continue;
    own++;
    if (circuit.pilot) pilots++;
  }
  for (const { homeRun } of homeRuns)
    homeRun.pieces.forEach(({ method }, i) => {
      if (method === 'tray') return;
      counted++;
      if (method !== 'LFMC') stiff++;
      const lines = homeRun.packings[i]!.conductors.filter(({ use }) => use === 'line');
      if (lines.length === 1 && lines[0]!.count === 3) threeLines++;
    });
  const sharedBuried = shared.filter(({ under }) => under !== null).length;
  return {
    circuits: own,
    pilots,
    unsized: unsized.length,
    conduits: counted,
    threeLines,
    stiff,
    buried: buried.length + sharedBuried,
    standing: boxCount - buried.length + shared.length - sharedBuried,
  };
});

/** The branches of all equipment in numbers; what one piece has is counted again only where its branches changed. */
export const branchCounts = kept(
  (branches: readonly EquipmentBranches[]): BranchCounts =>
    // By itself alone: `map` hands on place and list besides, and would have it worked anew with every new list.
    branches
      .map((one) => ownCounts(one))
      .reduce(
        (sum, one) => ({
          circuits: sum.circuits + one.circuits,
          pilots: sum.pilots + one.pilots,
          unsized: sum.unsized + one.unsized,
          conduits: sum.conduits + one.conduits,
          threeLines: sum.threeLines + one.threeLines,
          stiff: sum.stiff + one.stiff,
          buried: sum.buried + one.buried,
          standing: sum.standing + one.standing,
        }),
        NONE,
      ),
);
