import { kept } from '../../routing/kept/kept.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import { siteRule } from '../../routing/site/rules/rule-notes.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Rules, Site } from '../../routing/site/site.ts';
import { type ConduitGround, conduitGround } from '../branches/ground.ts';
import { suitsWetPlaces } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { cited } from '../tables/sections.ts';
import { coverFindings } from './conduits/cover-findings.ts';
import { riserFindings } from './conduits/riser-findings.ts';
import { cordFindings } from './cord-findings.ts';

/**
 * What the rules and the raceways say before anything is worked: tables not held, dry insulation, shallow burial, trays,
 * pull points beside the raceways.
 */
export function siteFindings(site: Site, tables: CodeTables): readonly Finding[] {
  const { raceways, stalls, aisles, chargers, rules, units } = site;
  return [
    ...settledFindings(conduitGround(site), raceways, stalls, aisles, chargers.length > 0, rules, units, tables),
    ...cordFindings(chargers, rules.ambientC, tables),
    ...riserFindings(raceways, stalls, aisles, site.equipment, tables, units),
  ];
}

const settledFindings = kept(siteFindingsOf);

function siteFindingsOf(
  ground: ConduitGround,
  raceways: Site['raceways'],
  stalls: Site['stalls'],
  aisles: Site['aisles'],
  charges: boolean,
  rules: Rules,
  units: Units,
  tables: CodeTables,
): readonly Finding[] {
  const findings: Finding[] = [...coverFindings(raceways, stalls, aisles, tables, units)];
  if (rules.code !== tables.edition)
    findings.push({
      severity: 'warn',
      rule: 'code-edition',
      about: [],
      says: `The site asks for the tables of ${JSON.stringify(rules.code)}, which are not held; those of ${tables.edition} were used.`,
      source: siteRule('code'),
    });
  if (charges && !suitsWetPlaces(tables, rules.insulation))
    findings.push({
      severity: 'fail',
      rule: 'wet-insulation',
      about: [],
      says: `${rules.insulation} has no rating for wet locations, and the inside of a raceway outdoors is one. THWN-2 and XHHW-2 have.`,
      source: cited(tables, 'wetUnderground', 'wetAbove'),
    });
  if (ground.loose.length > 0) {
    const loose = ground.loose.map(({ id }) => id);
    findings.push({
      severity: 'warn',
      rule: 'loose-pull-point',
      about: loose,
      says: `${loose.length === 1 ? `${loose[0]} is` : `${loose.length} pull points are`} on no raceway: farther than ${printLength(rules.joinTolerance, units)} from the nearest. No conduit is opened there.`,
      limit: rules.joinTolerance,
      unit: 'ft',
      source: siteRule('joinTolerance'),
    });
  }
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
