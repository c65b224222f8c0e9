import type { Finding } from '../../routing/site/finding.ts';
import type { Drop, Site } from '../../routing/site/site.ts';
import type { Units } from '../../routing/site/vocabulary.ts';
import { dropPlaces } from '../circuits/drop-places.ts';
import type { Design } from '../conduits/design.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import { picking, remembered } from '../memo.ts';
import { circuitFindings } from './circuit-findings.ts';
import { conduitFindings } from './conduit-findings.ts';
import { inOrder } from './in-order.ts';
import { siteFindings } from './site-findings.ts';
import { soundFinding } from './sound.ts';

/** Everything there is to say about a site and its plan, in reading order. `others` are what the other stages said. */
export function planFindings(
  site: Site,
  design: Design,
  branches: readonly EquipmentBranches[],
  others: readonly (readonly Finding[])[],
): readonly Finding[] {
  const findings: Finding[] = [...siteFindings(site, design.tables)];
  for (const other of others) for (const finding of other) findings.push(finding);
  for (const one of branches) {
    const drops = ownDrops(site.drops, dropPlaces(site.chargers, site.drops, one.positions));
    for (const finding of branchFindings(one, drops, design, site.units)) findings.push(finding);
  }
  const sound = soundFinding(site, findings);
  return inOrder(sound === null ? findings : [...findings, sound]);
}

const ownDrops = picking<Drop>();

/** What there is to say of the branches of one piece of equipment by themselves; `drops` are those of its chargers. */
const branchFindings = remembered(
  (branches: EquipmentBranches, drops: readonly Drop[], design: Design, units: Units): readonly Finding[] => [
    ...circuitFindings(branches, drops, design, units),
    ...conduitFindings(branches.homeRuns, design, units),
  ],
);
