import type { Finding } from '../../routing/site/finding.ts';
import type { Site } from '../../routing/site/site.ts';
import { dropPlaces } from '../circuits/drop-places.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import type { Design } from '../conduits/home-run.ts';
import { suitsWetPlaces } from '../tables/lookup.ts';
import { circuitFindings } from './circuit-findings.ts';
import { conduitFindings } from './conduit-findings.ts';
import { inOrder } from './in-order.ts';
import { soundFinding } from './sound.ts';

/** Everything there is to say about a site and its plan, in reading order. `others` are what the other stages said. */
export function planFindings(
  site: Site,
  { tables, rules }: Design,
  branches: readonly EquipmentBranches[],
  others: readonly (readonly Finding[])[],
): readonly Finding[] {
  const places = dropPlaces(site.chargers, site.drops);
  const findings: Finding[] = [...siteFindings(site, tables)];
  for (const other of others) for (const finding of other) findings.push(finding);
  for (const one of branches) {
    const cords = one.positions.map((position) => site.drops[places[position]!]!.cord);
    findings.push(...circuitFindings(one, cords, tables, rules, site.units));
    for (const homeRun of one.homeRuns) findings.push(...conduitFindings(homeRun, tables, rules, site.units));
  }
  const sound = soundFinding(site, findings);
  return inOrder(sound === null ? findings : [...findings, sound]);
}

function siteFindings({ rules, raceways, chargers }: Site, tables: Design['tables']): readonly Finding[] {
  const findings: Finding[] = [];
  if (rules.code !== tables.edition)
    findings.push({
      severity: 'warn',
      rule: 'code-edition',
      about: [],
      says: `The site asks for the tables of ${JSON.stringify(rules.code)}, which are not held; those of ${tables.edition} were used.`,
      source: 'site rule code',
    });
  if (chargers.length > 0 && !suitsWetPlaces(tables, rules.insulation))
    findings.push({
      severity: 'warn',
      rule: 'wet-insulation',
      about: [],
      says: `${rules.insulation} has no rating for wet locations, and the inside of a raceway outdoors is one. THWN-2 and XHHW-2 have.`,
      source: `${tables.edition} 300.5(B), 300.9`,
    });
  const trays = raceways.filter(({ method }) => method === 'tray').map(({ id }) => id);
  if (trays.length > 0)
    findings.push({
      severity: 'note',
      rule: 'tray-fill',
      about: trays,
      says: `The fill of ${trays.length === 1 ? `tray ${trays[0]}` : `${trays.length} trays`} is not checked: each circuit in a tray is taken as a cable of its own.`,
      source: `${tables.edition} Article 392, not covered`,
    });
  return findings;
}
