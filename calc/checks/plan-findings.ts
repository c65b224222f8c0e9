import { kept } from '../../routing/kept/kept.ts';
import { keptEach } from '../../routing/kept/kept-list.ts';
import { concatenating, splitting } from '../../routing/kept/parts.ts';
import { dropsOf } from '../../routing/site/hanging.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Drop } from '../../routing/site/site.ts';
import type { Design } from '../branches/design.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import { feedsOf } from '../branches/feeds.ts';
import { asBuiltFindings } from './as-built-findings.ts';
import { changedRules } from './changed-rules.ts';
import { circuitFindings } from './circuit-findings.ts';
import { conduitFindings } from './conduits/conduit-findings.ts';
import { type LimitGround, limitGround } from './conduits/pull-limits.ts';
import { findingsInOrder } from './in-order.ts';
import type { Looked } from './looked.ts';
import { recordConflicts } from './record-conflicts.ts';
import { siteFindings } from './site-findings.ts';
import { withSound } from './sound.ts';

const ownDrops = splitting<Drop>();
const allBranchFindings = concatenating<Finding>();

/** Everything there is to say about what was looked at, in reading order. `others` are what the other stages said. */
export function planFindings(
  looked: Looked,
  design: Design,
  others: readonly (readonly Finding[])[],
): readonly Finding[] {
  const { site, branches } = looked;
  const feeds = feedsOf(site.chargers);
  const drops = ownDrops(dropsOf(site.chargers, site.drops), feeds.partition);
  const ground = limitGround(site);
  const ofBranches = allBranchFindings(byEquipment([branches, drops], [design, ground]));
  return withSound(
    looked,
    findingsInOrder([
      changedRules(site.rules, site.units),
      siteFindings(site, design.tables),
      asBuiltFindings(site),
      recordConflicts(site.records),
      ofBranches,
      ...others,
    ]),
  );
}

/** What there is to say of the branches of each piece of equipment by themselves; `drops` are those of its chargers. */
const byEquipment = keptEach(
  (
    [branches, drops]: readonly [EquipmentBranches, readonly Drop[]],
    [design, ground]: readonly [Design, LimitGround],
  ) => branchFindings(branches, drops, design, ground),
);

const branchFindings = kept(
  (branches: EquipmentBranches, drops: readonly Drop[], design: Design, ground: LimitGround): readonly Finding[] => [
    ...circuitFindings(branches, drops, design, ground.units),
    ...conduitFindings(branches.homeRuns, design, ground),
  ],
);
