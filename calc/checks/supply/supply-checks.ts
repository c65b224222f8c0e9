import { kept } from '../../../routing/kept/kept.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';
import type { SupplyResult } from '../../supply/supply.ts';
import { ductFindings } from './duct-findings.ts';
import { disconnectFindings } from './protection/disconnect-findings.ts';
import { tripFindings } from './protection/trip-findings.ts';
import { supplyFindings } from './supply-findings.ts';
import { totalDropFindings } from './volts/total-drop.ts';
import { boxWindowFindings } from './volts/voltage-window.ts';

const checked = kept(supplyFindings);

/** All there is to say of a supply: of its tree and ways, of its equipment and feeders, of the drop at each box. */
export const supplyChecks = (
  site: Site,
  { facts, findings, boxSupply }: SupplyResult,
  ohms: readonly EquipmentBranches['ohms'][],
  branches: readonly EquipmentBranches[],
): readonly Finding[] => [
  ...findings,
  ...checked(facts),
  ...tripFindings(branches, facts),
  ...disconnectFindings(site, facts.tables),
  ...ductFindings(site, facts.tables),
  ...totalDropFindings(site, boxSupply, ohms),
  ...boxWindowFindings(boxSupply, ohms),
];
