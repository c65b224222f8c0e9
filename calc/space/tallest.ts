import { kept } from '../../routing/kept/kept.ts';
import type { Column, Drop, Equipment, Member, Raceway, Site, Vehicle } from '../../routing/site/site.ts';

/** From the lowest to the highest that anything of a site is, feet; grade is 0. */
export interface Heights {
  readonly low: number;
  readonly high: number;
}

const of = <T>(heights: (item: T) => readonly number[]) =>
  kept((items: readonly T[]): Heights => {
    let [low, high] = [0, 0];
    for (const item of items)
      for (const height of heights(item)) {
        low = Math.min(low, height);
        high = Math.max(high, height);
      }
    return { low, high };
  });

const ofMembers = of<Member>(({ from, to }) => [from[2], to[2]]);
const ofRaceways = of<Raceway>(({ path }) => path.map((at) => at[2]));
const ofDrops = of<Drop>(({ box, retractor }) => [box[2], retractor?.[2] ?? 0]);
const ofColumns = of<Column>(({ height }) => [height ?? 0]);
const ofEquipment = of<Equipment>(({ size, entry }) => [size[2], entry[2]]);
const ofVehicles = kept(
  (vehicles: ReadonlyMap<string, Vehicle>): Heights => ({
    low: 0,
    high: Math.max(0, ...[...vehicles.values()].map(({ height }) => height)),
  }),
);

/** From the lowest to the highest that anything of a site is, feet: each list is gone through once for as long as it stays. */
export function heightsOf(site: Site): Heights {
  const all = [
    ofMembers(site.members),
    ofRaceways(site.raceways),
    ofDrops(site.drops),
    ofColumns(site.columns),
    ofEquipment(site.equipment),
    ofVehicles(site.vehicles),
  ];
  return { low: Math.min(...all.map(({ low }) => low)), high: Math.max(...all.map(({ high }) => high)) };
}
