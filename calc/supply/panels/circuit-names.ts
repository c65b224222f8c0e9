import { kept } from '../../../routing/kept/kept.ts';
import type { Site } from '../../../routing/site/site.ts';
import { panelSchedules } from './panel-schedule.ts';

/** What circuits go by on the door card, by what they serve: `P1-1/3`. */
export const circuitNames = kept(
  (site: Site): ReadonlyMap<string, string> =>
    new Map(
      [...panelSchedules(site).values()].flatMap(({ equipment, circuits }) =>
        circuits.flatMap(({ id, spaces }): [string, string][] =>
          spaces.length > 0 ? [[id, `${equipment}-${spaces.join('/')}`]] : [],
        ),
      ),
    ),
);
