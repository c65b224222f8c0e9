import { kept } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Charger } from '../../routing/site/site.ts';
import { cord } from '../circuits/cord.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { cited } from '../tables/sections.ts';

/** Chargers whose output no cord of the tables carries: one finding for each number of amperes. */
export const cordFindings = kept(
  (chargers: readonly Charger[], ambientC: number, tables: CodeTables): readonly Finding[] => {
    const alike = new Map<string, Charger[]>();
    for (const charger of chargers) {
      const key = `${charger.amps} ${charger.phases}`;
      addTo(alike, key, charger);
    }
    return [...alike.values()].flatMap((list): Finding[] => {
      const { id, amps, volts, phases } = list[0]!;
      // Its length says nothing of what it carries.
      if (cord(tables, { amps, volts, phases, length: 0, ambientC }) !== null) return [];
      return [
        {
          severity: 'warn',
          rule: 'cord-ampacity',
          about: list.map((charger) => charger.id),
          says: `No cord of the tables carries the ${amps} A of ${list.length === 1 ? id : `${list.length} chargers from ${id} on`} at ${ambientC} °C, so that what it weighs, how it bends and what it drops is not known here. Its listing says, as of a cooled one; or fewer amperes.`,
          value: amps,
          unit: 'A',
          source: `${cited(tables, 'chargerCord')}, ${tables.cords.source}`,
        },
      ];
    });
  },
);
