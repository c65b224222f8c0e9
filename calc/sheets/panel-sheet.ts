import type { Site } from '../../routing/site/site.ts';
import type { Plan } from '../plan/plan-shape.ts';
import { panelSchedules } from '../supply/panels/panel-schedule.ts';
import { CAUTIONS } from '../words/cautions.ts';
import type { Cell } from './csv.ts';

/** Panel schedules under one another: a row for each breaker, with its spaces, lines and what it serves. */
export function panelSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const feeders = new Map(site.feeders.map((feeder) => [feeder.id, feeder]));
  const loads = new Map(site.loads.map((load) => [load.id, load]));
  const head = ['panel', 'spaces', 'lines', 'serves', 'what', 'breaker (A)', 'amps', 'va'];
  const rows = [...panelSchedules(site).values()].flatMap(({ equipment, circuits: breakers }) =>
    breakers.map(({ id, serves, lines, spaces }): Cell[] => {
      const charger = site.chargers.find((one) => serves === 'charger' && one.id === id);
      const load = serves === 'load' ? loads.get(id) : undefined;
      return [
        equipment,
        spaces.length > 0 ? spaces.join(', ') : 'no space',
        lines,
        id,
        load?.name ?? serves,
        serves === 'charger' ? (circuits.get(id)?.breakerAmps ?? null) : (feeders.get(id)?.breakerAmps ?? null),
        charger?.amps ?? null,
        load?.va ?? (charger ? charger.amps * charger.volts * (charger.phases === 3 ? Math.sqrt(3) : 1) : null),
      ];
    }),
  );
  return [head, ...rows, [], [CAUTIONS]];
}
