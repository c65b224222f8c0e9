import type { NeedsOf } from '../../../routing/checks/equipment/working-needs.ts';
import type { Charger, Drop, Equipment, Point3, Raceway, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** A site of some elements, in feet. */
export const siteOf = (parts: Partial<SiteFile> = {}): Site =>
  toSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'test', ...parts });

export const raceway = (id: string, path: readonly Point3[]): Raceway => ({
  id,
  path,
  method: 'EMT',
  place: 'overhead',
});

/** NEC 110.26(A): 3 ft deep, 30 in wide, 6 1/2 ft high; width and height from memory. */
export const LEAST_SPACE = { width: 2.5, depth: 3, height: 6.5 };
/** Of equipment of which nothing more is known. */
export const LEAST_ALONE: NeedsOf = { least: LEAST_SPACE, by: new Map() };

export const panel = (id: string, entry: Point3, more: Partial<Equipment> = {}): Equipment => ({
  id,
  kind: 'panelboard',
  at: [entry[0], entry[1]],
  size: [3, 1, 6],
  entry,
  volts: 208,
  phases: 3,
  ...more,
});

export const box = (id: string, at: Point3): Drop => ({ id, box: at, cord: 25 });

export const charger = (id: string, drop: string, from: string, more: Partial<Charger> = {}): Charger => ({
  id,
  drop,
  stalls: [],
  from,
  amps: 32,
  volts: 208,
  phases: 1,
  ...more,
});

/** One panel P1, one box at D1 and its charger C1, on some raceways. */
export const oneRun = (raceways: readonly Raceway[], entry: Point3, at: Point3, rules: SiteFile['rules'] = {}): Site =>
  siteOf({
    raceways: [...raceways],
    equipment: [panel('P1', entry)],
    drops: [box('D1', at)],
    chargers: [charger('C1', 'D1', 'P1')],
    rules,
  });
