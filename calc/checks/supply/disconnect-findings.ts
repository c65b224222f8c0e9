import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Drop, Equipment, Site } from '../../../routing/site/site.ts';
import { type DisconnectNeed, disconnectNeeds } from '../../supply/panels/charger-disconnects.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';

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
  for (const need of needs) if (!need.drawn) addTo(by, need.charger.from, need);
  return [...by].map(([from, list]): Finding => {
    const [first] = list;
    const who = list.length === 1 ? `${first!.charger.id}` : `${list.length} chargers of ${from}`;
    return {
      severity: 'warn',
      rule: 'disconnect',
      about: [...list.map(({ charger }) => charger.id), from],
      says: `${who}: ${first!.says}. None is drawn; the takeoff counts one for each. A breaker of ${from} may be it where it is readily accessible and can be locked open. Feed ${list.length === 1 ? 'it' : 'them'} from a disconnect that is drawn, or say on the drawings which means it is.`,
      value: first!.charger.amps,
      limit: tables.vehicleSupply.disconnectAboveAmps,
      unit: 'A',
      source: sourceOf(tables),
    };
  });
});

/** Disconnects that are drawn, but farther from the box than one is in sight. */
function outOfSight(
  needs: readonly DisconnectNeed[],
  drops: readonly Drop[],
  equipment: readonly Equipment[],
  units: Units,
  tables: CodeTables,
): readonly Finding[] {
  const own = needs.filter(({ drawn }) => drawn);
  if (own.length === 0) return [];
  const [dropOf, equipmentOf] = [byId(drops), byId(equipment)];
  const limit = tables.vehicleSupply.inSightFt;
  return own.flatMap(({ charger }): Finding[] => {
    const drop = dropOf.get(charger.drop);
    const one = equipmentOf.get(charger.from);
    if (drop === undefined || one === undefined) return [];
    const away = Math.hypot(drop.box[0] - one.at[0], drop.box[1] - one.at[1]);
    if (away <= limit * (1 + 1e-9)) return [];
    return [
      {
        severity: 'warn',
        rule: 'disconnect',
        about: [charger.id, one.id, drop.id],
        says: `Disconnect ${one.id} is ${printLength(away, units)} from the box of ${charger.id}, and what is in sight is no farther than ${printLength(limit, units)}: a plaque at the equipment says where it is. Or a disconnect nearer by.`,
        value: away,
        limit,
        unit: 'ft',
        source: `${sourceOf(tables)}; in sight: from memory`,
      },
    ];
  });
}
