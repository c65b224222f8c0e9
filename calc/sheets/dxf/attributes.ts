import { addTo } from '../../../routing/lists/grouping.ts';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Conduit } from '../../plan-file/branches.ts';
import { conduitSize } from '../pdf/schedules/circuit-words.ts';

/** Values by the tags of the attributes, in their order. */
export type Values = Readonly<Record<string, string>>;

/** Tags of the attributes of each block, in order. `CIRCUIT` and what follows on it are as many as a drop has chargers. */
export const blockTags = (mostCircuits: number): Readonly<Record<string, readonly string[]>> => ({
  DROP: [
    'TAG',
    ...Array.from({ length: Math.max(1, mostCircuits) }, (_, i) => circuitTag(i)),
    'CHARGER',
    'SIZE',
    'CONDUCTOR',
    'BREAKER',
    'CORD',
    'FROM',
  ],
  OPENING: ['TAG', 'SIZE', 'CONDUITS'],
  EQUIPMENT_TAG: ['TAG', 'KIND', 'VOLTS', 'AMPS'],
  CONDUIT_TAG: ['TAG', 'SIZE', 'CIRCUITS', 'LENGTH', 'FROM', 'TO'],
  FEEDER_TAG: ['TAG', 'SIZE', 'BREAKER', 'LENGTH', 'FROM', 'TO'],
});

export const circuitTag = (i: number): string => (i === 0 ? 'CIRCUIT' : `CIRCUIT${i + 1}`);

/** Most chargers at one drop. */
export function mostCircuits({ chargers }: Site): number {
  const counts = new Map<string, number>();
  for (const { drop } of chargers) counts.set(drop, (counts.get(drop) ?? 0) + 1);
  return Math.max(1, ...counts.values());
}

/** What each drop says of itself. */
export function dropValues(site: Site, plan: Plan, tags: ReadonlyMap<string, string>): ReadonlyMap<string, Values> {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const boxes = new Map(plan.boxes.filter(({ kind }) => kind === 'drop').map((box) => [box.id, box]));
  const chargers = new Map<string, Site['chargers'][number][]>();
  for (const charger of site.chargers) addTo(chargers, charger.drop, charger);
  return new Map(
    site.drops.map(({ id, cord }): [string, Values] => {
      const mine = chargers.get(id) ?? [];
      const own = mine.flatMap((charger) => circuits.get(charger.id) ?? []);
      return [
        id,
        {
          TAG: id,
          ...Object.fromEntries(mine.map((charger, i) => [circuitTag(i), tags.get(charger.id) ?? ''])),
          CHARGER: mine.map((charger) => charger.id).join(', '),
          SIZE: unique(boxes.get(id)?.raceways ?? []),
          CONDUCTOR: unique(own.map(({ conductor }) => `${conductor.size} ${conductor.metal} ${conductor.insulation}`)),
          BREAKER: unique(own.map(({ breakerAmps }) => `${breakerAmps} A`)),
          CORD: printLength(cord, site.units),
          FROM: unique(mine.map(({ from }) => from)),
        },
      ];
    }),
  );
}

const unique = (words: readonly string[]): string => [...new Set(words)].join(', ');

/** What each pull point and junction says of itself. */
export function openingValues(site: Site, plan: Plan): ReadonlyMap<string, Values> {
  const handholes = new Map(plan.handholes.map(({ id, size }) => [id, size]));
  const boxes = new Map(plan.boxes.map((box) => [box.id, box]));
  const ids = [
    ...site.pullpoints.map(({ id }) => id),
    ...plan.boxes.flatMap(({ id, kind }) => (kind === 'junction' ? [id] : [])),
  ];
  return new Map(
    ids.map((id) => [
      id,
      {
        TAG: id,
        SIZE: handholes.get(id) ?? boxes.get(id)?.box ?? '',
        CONDUITS: (boxes.get(id)?.conduits ?? []).join(', '),
      },
    ]),
  );
}

export const equipmentValues = ({ id, kind, volts, busAmps, mainAmps }: Site['equipment'][number]): Values => ({
  TAG: id,
  KIND: kind,
  VOLTS: volts === undefined ? '' : String(volts),
  AMPS: busAmps === undefined && mainAmps === undefined ? '' : String(busAmps ?? mainAmps),
});

export const conduitValues = (conduit: Conduit, site: Site): Values => ({
  TAG: conduit.id,
  SIZE: conduitSize(conduit),
  CIRCUITS: conduit.circuits.join(', '),
  LENGTH: printLength(conduit.length, site.units),
  FROM: conduit.from,
  TO: conduit.to,
});

/** What each feeder says of itself, and whether its way is drawn. */
export function feederValues(site: Site, plan: Plan): ReadonlyMap<string, Values> {
  const lengths = new Map(plan.supply.feeders.map(({ id, length }) => [id, length]));
  const routed = new Set(feederRoutesOf(site).routes.flatMap(({ feeder, way }) => (way ? [feeder] : [])));
  return new Map(
    site.feeders.map(({ id, from, to, conductor, raceway, breakerAmps, length }) => {
      const { sets, size, metal, insulation } = conductor;
      const feet = lengths.get(id) ?? length;
      const said = feet === undefined ? '' : printLength(feet, site.units);
      return [
        id,
        {
          TAG: id,
          SIZE: `${sets > 1 ? `(${sets}) ` : ''}${size} ${metal} ${insulation}${raceway ? ` in ${raceway}` : ''}`,
          BREAKER: `${breakerAmps} A`,
          LENGTH: routed.has(id) ? said : `${said} (way not drawn)`,
          FROM: from,
          TO: to,
        },
      ];
    }),
  );
}
