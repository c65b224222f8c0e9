import { joining } from '../../routing/kept/parts.ts';
import type { Site } from '../../routing/site/site.ts';
import type { BranchOhms, EquipmentBranches } from './equipment-branches.ts';
import { feedsOf } from './feeds.ts';

const allOhms = joining<BranchOhms | null>();

/** Ohms of one line of each branch, by the equipment that feeds it; null where a charger has none. */
export const ohmsByEquipment = (branches: readonly EquipmentBranches[]): readonly EquipmentBranches['ohms'][] =>
  branches.map(({ ohms }) => ohms);

/** The same in the order of the site's chargers. */
export const ohmsOf = (
  { chargers }: Pick<Site, 'chargers'>,
  branches: readonly EquipmentBranches[],
): readonly (BranchOhms | null)[] => allOhms(ohmsByEquipment(branches), feedsOf(chargers).partition);
