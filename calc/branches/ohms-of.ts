import type { Site } from '../../routing/site/site.ts';
import { joining } from '../kept/partition.ts';
import type { BranchOhms } from './branch-ohms.ts';
import type { EquipmentBranches } from './equipment-branches.ts';
import { feedsOf } from './feeds.ts';

const allOhms = joining<BranchOhms | null>();

/** Ohms of one line of each charger's branch, in the order of the site's chargers; null where it has none. */
export const ohmsOf = (site: Site, branches: readonly EquipmentBranches[]): readonly (BranchOhms | null)[] =>
  allOhms(
    branches.map(({ ohms }) => ohms),
    feedsOf(site.chargers).partition,
  );
