import { kept } from '../../../../routing/kept/kept.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drop, Equipment, Site } from '../../../../routing/site/site.ts';
import { type DisconnectNeed, disconnectNeeds } from '../../../supply/panels/charger-disconnects.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { cited } from '../../../tables/sections.ts';

/** Chargers that have to have a disconnect: those that have none drawn, and those out of sight of theirs. */
export function disconnectFindings(site: Site, tables: CodeTables): readonly Finding[] {
  const needs = disconnectNeeds(site.chargers, treeOf(site), tables);
  if (needs.length === 0) return needs as readonly never[];
  return [...undrawn(needs, tables), ...outOfSight(needs, site.drops, site.equipment, site.units, tables)];
}

const sourceOf = (tables: CodeTables): string => cited(tables, 'chargerDisconnect', 'lockable');

/** One finding for all chargers of a piece of equipment that have none. Remembered: it goes by no place. */
const undrawn = kept((needs: readonly DisconnectNeed[], tables: CodeTables): readonly Finding[] => {
  const by = new Map<string, DisconnectNeed[]>();
  for (const need of needs) if (!need.drawn && need.own === null) addTo(by, need.charger.from, need);
  return [...by].map(([from, list]): Finding => {
    const [first] = list;
    const who = list.length === 1 ? `${first!.charger.id}` : `${list.length} chargers of ${from}`;
    return {
      severity: 'warn',
      rule: 'disconnect',
      about: [...list.map(({ charger }) => charger.id), from],
      says: `${who}: ${first!.says}. None is drawn; the takeoff counts one for each. A breaker of ${from} may be it where it is readily accessible and can be locked open: say so of ${from}. Or give how far ${list.length === 1 ? 'its' : 'their'} own disconnect stands, or feed ${list.length === 1 ? 'it' : 'them'} from one that is drawn.`,
      value: first!.charger.amps,
      limit: tables.vehicleSupply.disconnectAboveAmps,
      unit: 'A',
      source: sourceOf(tables),
    };
  });
});

/** Disconnects that are drawn or given, but farther from the box than one is in sight. */
function outOfSight(
  needs: readonly DisconnectNeed[],
  drops: readonly Drop[],
  equipment: readonly Equipment[],
  units: Units,
  tables: CodeTables,
): readonly Finding[] {
  const known = needs.filter(({ drawn, own }) => drawn || own !== null);
  if (known.length === 0) return [];
  const [dropOf, equipmentOf] = [byId(drops), byId(equipment)];
  const limit = tables.vehicleSupply.inSightFt;
  return known.flatMap(({ charger, own }): Finding[] => {
    const drop = dropOf.get(charger.drop);
    const one = equipmentOf.get(charger.from);
    if (drop === undefined || one === undefined) return [];
    const away = own ?? Math.hypot(drop.box[0] - one.at[0], drop.box[1] - one.at[1]);
    if (away <= limit * (1 + 1e-9)) return [];
    return [
      {
        severity: 'warn',
        rule: 'disconnect',
        about: own === null ? [charger.id, one.id, drop.id] : [charger.id],
        says: `${own === null ? `${one.kind === 'disconnect' ? 'Disconnect' : 'The breaker in'} ${one.id} is ${printLength(away, units)} from the box of ${charger.id}` : `The disconnect of ${charger.id} is ${printLength(away, units)} from it`}, and what is in sight is no farther than ${printLength(limit, units)}: a plaque at the equipment says where it is. Or a disconnect nearer by.`,
        value: away,
        limit,
        unit: 'ft',
        source: `${sourceOf(tables)}; in sight: from memory`,
      },
    ];
  });
}
