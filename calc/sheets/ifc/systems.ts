import { addTo } from '../../../routing/lists/grouping.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { circuitTags } from '../pdf/schedules/circuit-words.ts';
import { guidOf } from './guid.ts';
import { type Ports, portsIn } from './ports.ts';
import type { ShapeRoom } from './shapes.ts';
import { of, type StepValue, stepText, word } from './step.ts';

/** Products by their keys, as records. */
type Records = ReadonlyMap<string, number>;

/**
 * What belongs together and what feeds what: a distribution system for each piece of equipment, made up of the circuit of
 * each charger and of each feeder that leaves it, with all that they run through; and ports from source to sink along
 * both, and from box to box along the conduits.
 */
export function addSystems(room: ShapeRoom, site: Site, plan: Plan, records: Records, ground: number): void {
  const ports = portsIn(room, records);
  const circuits = new Map<string, number[]>();
  const put = (from: string, circuit: number): void => {
    addTo(circuits, from, circuit);
  };
  addFeeders(room, site, records, ports, put);
  addCircuits(room, site, plan, records, ports, put);
  joinConduits(site, plan, ports);
  ports.close();
  const { writer } = room;
  for (const { id } of site.equipment) {
    const mine = circuits.get(id);
    if (!mine) continue;
    const system = group(room, 'IFCDISTRIBUTIONSYSTEM', `system ${id}`, id, `what ${id} feeds`);
    assign(room, `system ${id}`, system, members(records, [`equipment ${id}`]));
    writer.add('IFCRELAGGREGATES', stepText(guidOf(`circuits of ${id}`)), null, null, null, of(system), mine.map(of));
    writer.add('IFCRELSERVICESBUILDINGS', stepText(guidOf(`serves ${id}`)), null, null, null, of(system), [of(ground)]);
  }
}

type Put = (from: string, circuit: number) => void;

function addFeeders(room: ShapeRoom, site: Site, records: Records, ports: Ports, put: Put): void {
  const equipment = byId(site.equipment);
  for (const { id, from, to } of site.feeders) {
    const key = `feeder ${id}`;
    const [start, end] = [equipment.get(from), equipment.get(to)];
    if (!records.has(key) || !start || !end) continue;
    const circuit = group(room, 'IFCDISTRIBUTIONCIRCUIT', `circuit of ${key}`, id, `${from} to ${to}`);
    assign(room, `circuit of ${key}`, circuit, members(records, [key, `equipment ${to}`]));
    put(from, circuit);
    feed(ports, `equipment ${from}`, key, `equipment ${to}`, start.entry, end.entry, id);
  }
}

function addCircuits(room: ShapeRoom, site: Site, plan: Plan, records: Records, ports: Ports, put: Put): void {
  const tags = circuitTags(site);
  const conduits = byId(plan.conduits);
  const along = new Map(plan.circuits.map((one) => [one.charger, one.conduits]));
  for (const { charger, drop, from, path } of plan.runs) {
    const key = `circuit ${charger}`;
    if (!records.has(key)) continue;
    const circuit = group(room, 'IFCDISTRIBUTIONCIRCUIT', `circuit of ${key}`, charger, tags.get(charger) ?? charger);
    const parts = (along.get(charger) ?? []).flatMap((id) => {
      const conduit = conduits.get(id);
      if (!conduit) return [];
      const bends = bendsOf(conduit.path as readonly Point3[]).map((_, i) => `bend ${id} ${i + 1}`);
      return [`conduit ${id}`, ...bends];
    });
    assign(
      room,
      `circuit of ${key}`,
      circuit,
      members(records, [key, ...parts, `box ${drop}`, `outlet ${drop}`, `charger ${charger}`]),
    );
    put(from, circuit);
    feed(ports, `equipment ${from}`, key, `charger ${charger}`, path[0]!, path.at(-1)!, charger);
  }
}

/** Ports from what feeds, through a cable, to what is fed. */
function feed(ports: Ports, from: string, cable: string, to: string, start: Point3, end: Point3, name: string): void {
  const leaves = ports.add(from, `${name} out`, 'SOURCE', 'CABLE', start);
  const enters = ports.add(cable, `${name} in`, 'SINK', 'CABLE', start);
  const goesOn = ports.add(cable, `${name} out`, 'SOURCE', 'CABLE', end);
  const arrives = ports.add(to, `${name} in`, 'SINK', 'CABLE', end);
  ports.join(leaves, enters);
  ports.join(goesOn, arrives);
}

/** Each conduit from the opening or equipment where it begins to that where it ends. */
function joinConduits(site: Site, plan: Plan, ports: Ports): void {
  const kinds = { drop: 'box', junction: 'junction', pullpoint: 'pull point' } as const;
  const ends = new Map<string, string>([
    ...site.equipment.map(({ id }) => [id, `equipment ${id}`] as const),
    ...site.pullpoints.map(({ id }) => [id, `pull point ${id}`] as const),
    ...plan.boxes.map(({ id, kind }) => [id, `${kinds[kind]} ${id}`] as const),
  ]);
  for (const { id, from, to, path } of plan.conduits) {
    for (const [end, name, at] of [
      [from, 'from', path[0]],
      [to, 'to', path.at(-1)],
    ] as const) {
      if (!at) continue;
      const mine = ports.add(`conduit ${id}`, name, 'SOURCEANDSINK', 'CABLECARRIER', at as Point3);
      const other = ports.add(ends.get(end) ?? '', `${id} ${name}`, 'SOURCEANDSINK', 'CABLECARRIER', at as Point3);
      ports.join(mine, other);
    }
  }
}

const members = (records: Records, keys: readonly string[]): StepValue[] =>
  [...new Set(keys)].flatMap((key) => {
    const record = records.get(key);
    return record === undefined ? [] : [of(record)];
  });

function group({ writer }: ShapeRoom, entity: string, key: string, name: string, long: string): number {
  return writer.add(
    entity,
    stepText(guidOf(key)),
    null,
    stepText(name),
    null,
    null,
    stepText(long),
    word('ELECTRICAL'),
  );
}

function assign({ writer }: ShapeRoom, key: string, to: number, parts: readonly StepValue[]): void {
  if (parts.length === 0) return;
  writer.add('IFCRELASSIGNSTOGROUP', stepText(guidOf(`parts of ${key}`)), null, null, null, [...parts], null, of(to));
}
