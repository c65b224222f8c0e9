import type { Charger } from '../../routing/site/site.ts';
import { settled } from '../memo.ts';
import { type BoxVolts, type BranchOhms, boxVolts } from './box-volts.ts';
import type { SupplyLines } from './supply-lines.ts';
import type { SupplyModel } from './supply-model.ts';
import type { SupplyTree } from './supply-tree.ts';
import type { Solved } from './sweep.ts';

/** What the voltages at the boxes were worked from. */
export interface BoxCase {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly lines: SupplyLines;
  readonly chargers: readonly Charger[];
  readonly powerFactor: number;
}

interface Known {
  readonly of: BoxCase;
  readonly ohms: readonly (BranchOhms | null)[];
  readonly boxes: readonly (BoxVolts | null)[];
}

const known = new WeakMap<Solved, Known>();

/**
 * Volts at the box of each charger, in the order of the chargers; null where it has no branch. Only boxes whose own branch
 * changed are worked again while the state of the supply is the same.
 */
export function boxesOf(
  of: BoxCase,
  solved: Solved,
  ohms: readonly (BranchOhms | null)[],
): readonly (BoxVolts | null)[] {
  const last = known.get(solved);
  const same =
    last !== undefined &&
    last.of.lines === of.lines &&
    last.of.chargers === of.chargers &&
    last.of.powerFactor === of.powerFactor;
  const boxes = of.chargers.map((charger, i) => {
    const branch = ohms[i] ?? null;
    if (same && last.ohms[i] === branch) return last.boxes[i]!;
    return branch === null ? null : boxOf(of, solved, charger, branch);
  });
  const kept = settled(same ? last.boxes : undefined, boxes);
  known.set(solved, { of, ohms, boxes: kept });
  return kept;
}

function boxOf(of: BoxCase, solved: Solved, charger: Charger, ohms: BranchOhms): BoxVolts | null {
  const place = of.tree.placeOf.get(charger.from);
  if (place === undefined) return null;
  const bus = of.model.loadBus[place]!;
  return boxVolts(ohms, solved.volts.subarray(6 * bus, 6 * bus + 6), {
    lines: of.lines.chargers.get(charger.id)!,
    amps: charger.amps * solved.share[bus]!,
    powerFactor: of.powerFactor,
    nominal: of.tree.nodes[place]!.system.volts,
  });
}
