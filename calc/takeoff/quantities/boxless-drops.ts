import { kept } from '../../../routing/kept/kept.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';

/** Drops of chargers to which no conduit comes from any equipment, each once: they have a box all the same. */
export function boxlessDrops(branches: readonly EquipmentBranches[]): readonly string[] {
  const boxless = new Set(branches.flatMap((one) => withoutBox(one)));
  if (boxless.size > 0) for (const one of branches) for (const id of boxed(one)) boxless.delete(id);
  return [...boxless];
}

const boxed = kept(
  ({ boxes, shared }: EquipmentBranches): ReadonlySet<string> => new Set([...boxes, ...shared].map(({ id }) => id)),
);

const withoutBox = kept((one: EquipmentBranches): readonly string[] => {
  const own = boxed(one);
  return [...new Set(one.chargers.map(({ drop }) => drop))].filter((drop) => !own.has(drop));
});
