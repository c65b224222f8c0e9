import { kept } from '../../../routing/kept/kept.ts';
import type { Load } from '../../../routing/site/site.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import type { NodeFault } from './fault.ts';

/** Full-load line amperes of a motor at its own volts. */
export const motorAmps = ({ va, volts, phases }: Pick<Load, 'va' | 'volts' | 'phases'>): number =>
  va / (phases === 3 ? Math.sqrt(3) * volts : volts);

/**
 * Full-load amperes of the motors that feed a fault at each node: those of its own system, from its transformer or source
 * on; what is between them is left out, which errs to more. Zero where there is none.
 */
export function motorsAt(tree: SupplyTree, loads: readonly Load[]): readonly number[] {
  const bySystem = new Map<number, number>();
  for (const load of loads) {
    const place = load.motor === true ? tree.placeOf.get(load.from) : undefined;
    if (place === undefined) continue;
    const system = tree.derivedFrom[place]!;
    bySystem.set(system, (bySystem.get(system) ?? 0) + motorAmps(load));
  }
  return tree.nodes.map((_, place) => bySystem.get(tree.derivedFrom[place]!) ?? 0);
}

/** Faults with what motors add: so many times their full-load amperes. The same list where no motor is drawn. */
export const withMotors = kept(
  (
    faults: readonly (NodeFault | null)[],
    tree: SupplyTree,
    loads: readonly Load[],
    times: number,
  ): readonly (NodeFault | null)[] => {
    const motors = motorsAt(tree, loads);
    if (times === 0 || motors.every((amps) => amps === 0)) return faults;
    return faults.map((fault, place) =>
      fault === null || fault.amps === null || motors[place] === 0
        ? fault
        : { ...fault, amps: { ...fault.amps, motorAmps: times * motors[place]! } },
    );
  },
);
