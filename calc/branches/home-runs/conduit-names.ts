import { kept } from '../../../routing/kept/kept.ts';
import type { Charger, IssuedCircuit } from '../../../routing/site/site.ts';
import type { HomeRun } from './home-run.ts';

/** Names issued for conduits, by the charger and the place of the conduit on its way from the equipment: `EV05/2`. */
export type IssuedConduits = ReadonlyMap<string, string>;

/** What was issued for the conduits of each piece of equipment, and every name of them. */
export interface IssuedNames {
  readonly of: ReadonlyMap<string, IssuedConduits>;
  readonly all: ReadonlySet<string>;
  /** Of the chargers whose circuits were issued too, and whose home runs therefore stay together. */
  readonly whole: ReadonlyMap<string, IssuedConduits>;
}

/** What was issued by equipment. A name is that of one piece of equipment: the one that feeds the first charger with it. */
export const issuedNames = kept(
  (issued: IssuedConduits, chargers: readonly Charger[], circuits: ReadonlyMap<string, IssuedCircuit>): IssuedNames => {
    const from = new Map(chargers.map((charger) => [charger.id, charger.from]));
    const owner = new Map<string, string>();
    const of = new Map<string, Map<string, string>>();
    const whole = new Map<string, Map<string, string>>();
    for (const [key, name] of issued) {
      const equipment = from.get(key.slice(0, key.lastIndexOf('/')));
      if (equipment === undefined) continue;
      if (!owner.has(name)) owner.set(name, equipment);
      if (owner.get(name) !== equipment) continue;
      const own = of.get(equipment) ?? new Map<string, string>();
      of.set(equipment, own.set(key, name));
      if (!circuits.has(key.slice(0, key.lastIndexOf('/')))) continue;
      const together = whole.get(equipment) ?? new Map<string, string>();
      whole.set(equipment, together.set(key, name));
    }
    return { of, all: new Set(issued.values()), whole };
  },
);

/** The key of the conduit that is the `place`th, from 1, on the way of a charger. */
export const conduitKey = (charger: string, place: number): string => `${charger}/${place}`;

const NONE: IssuedConduits = new Map();

/**
 * Names of the conduits of each home run where some were issued: the issued one, of the first of its chargers that has
 * one and before any other conduit that would have it; else the plan's own, `P1-3.2`, or where that was issued to another
 * the next number that is free. Null for a home run in which nothing differs from the plan's own.
 */
export function conduitNames(
  homeRuns: readonly HomeRun[],
  equipment: string,
  { of, all }: IssuedNames,
): readonly (readonly string[] | null)[] {
  const issued = of.get(equipment) ?? NONE;
  const held = new Set<string>();
  const standing = homeRuns.map(({ ways, pieces }) => {
    const found = pieces.map((): string | null => null);
    ways.forEach(({ charger }, member) => {
      const own = pieces
        .map((piece, i) => ({ i, piece }))
        .filter(({ piece }) => piece.members.includes(member))
        .sort((a, b) => a.piece.from - b.piece.from);
      own.forEach(({ i }, place) => {
        const name = issued.get(conduitKey(charger.id, place + 1));
        if (name === undefined || found[i] !== null || held.has(name)) return;
        found[i] = name;
        held.add(name);
      });
    });
    return found;
  });
  // A name that was issued is no other's, in this equipment or another, though what it was issued to is gone.
  return standing.map((found, run) => {
    const base = `${equipment}-${run + 1}`;
    let next = found.length + 1;
    const names = found.map((name, i) => {
      if (name !== null) return name;
      let own = `${base}.${i + 1}`;
      while (all.has(own)) own = `${base}.${next++}`;
      return own;
    });
    return names.every((name, i) => name === `${base}.${i + 1}`) ? null : names;
  });
}

/**
 * Names of the junctions of each home run where some were issued, for each of its pieces that of the junction it ends at
 * and none for another end: the issued one, of the first charger past it that has one; else the plan's own, `P1-3.J1`, or
 * where that was issued to another the next number that is free. Null for a home run in which nothing differs.
 */
export function junctionNames(
  homeRuns: readonly HomeRun[],
  equipment: string,
  { of, all }: IssuedNames,
): readonly (readonly string[] | null)[] {
  const issued = of.get(equipment) ?? NONE;
  const held = new Set<string>();
  const standing = homeRuns.map(({ ways, pieces }) => {
    const found = new Map<string, string>();
    ways.forEach(({ charger }, member) => {
      const passed = pieces
        .filter(({ members, end }) => members.includes(member) && end.kind === 'junction')
        .sort((a, b) => a.from - b.from);
      passed.forEach(({ end }, place) => {
        const name = issued.get(conduitKey(charger.id, place + 1));
        if (name === undefined || found.has(end.id) || held.has(name)) return;
        found.set(end.id, name);
        held.add(name);
      });
    });
    return found;
  });
  return standing.map((found, run) => {
    const { pieces } = homeRuns[run]!;
    const base = `${equipment}-${run + 1}.J`;
    const junctions = new Set(pieces.flatMap(({ end }) => (end.kind === 'junction' ? [end.id] : [])));
    let next = junctions.size + 1;
    const names = new Map<string, string>();
    for (const id of junctions) {
      let own = found.get(id) ?? `${base}${id}`;
      while (!found.has(id) && all.has(own)) own = `${base}${next++}`;
      names.set(id, own);
    }
    if ([...names].every(([id, name]) => name === `${base}${id}`)) return null;
    return pieces.map(({ end }) => (end.kind === 'junction' ? names.get(end.id)! : ''));
  });
}
