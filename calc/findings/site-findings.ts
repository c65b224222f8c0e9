import type { Finding } from '../../routing/site/finding.ts';
import type { Site } from '../../routing/site/site.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { suitsWetPlaces } from '../tables/lookup.ts';
import { coverFindings } from './cover-findings.ts';

/** What the rules and the raceways say before anything is worked: tables not held, dry insulation, shallow burial, trays. */
export function siteFindings(
  { rules, raceways, stalls, aisles, chargers, units }: Site,
  tables: CodeTables,
): readonly Finding[] {
  const findings: Finding[] = [...coverFindings(raceways, stalls, aisles, tables, units)];
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
