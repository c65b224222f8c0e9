import { joining } from '../../routing/kept/parts.ts';
import type { Site } from '../../routing/site/site.ts';
import type { BranchOhms } from './branch-ohms.ts';
import type { EquipmentBranches } from './equipment-branches.ts';
import { feedsOf } from './feeds.ts';

const allOhms = joining<BranchOhms | null>();

/** Ohms of one line of each charger's branch, in the order of the site's chargers; null where it has none. */
export const ohmsOf = (
  { chargers }: Pick<Site, 'chargers'>,
  branches: readonly EquipmentBranches[],
): readonly (BranchOhms | null)[] =>
  allOhms(
    branches.map(({ ohms }) => ohms),
    feedsOf(chargers).partition,
  );
