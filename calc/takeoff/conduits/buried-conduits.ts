import { kept } from '../../../routing/kept/kept.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Raceway } from '../../../routing/site/site.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';
import type { FeederConduit } from '../../supply/feeders/feeder-conduit.ts';

type Counts = ReadonlyMap<string, number>;
const NONE: Counts = new Map();

/** How many conduits lie side by side in each raceway in the ground: feet of conduit over feet of raceway, upwards. */
export function buriedConduits(
  raceways: readonly Raceway[],
  branches: readonly EquipmentBranches[],
  feeders: readonly FeederConduit[],
): Counts {
  const buried = buriedAmong(raceways);
  if (buried.size === 0) return NONE;
  const counts = [...buried].map(([id, length]): readonly [string, number] => {
    let feet = 0;
    for (const one of branches) feet += feetIn(one).get(id) ?? 0;
    for (const one of feeders) feet += feederFeet(one).get(id) ?? 0;
    return [id, Math.ceil(feet / length - 1e-6)];
  });
  return steady(raceways, JSON.stringify(counts));
}

/** The same map as long as the counts are the same. */
const steady = kept((_: readonly Raceway[], counts: string): Counts => new Map(JSON.parse(counts)));

/** Raceways in the ground with their lengths, feet. */
const buriedAmong = kept(
  (raceways: readonly Raceway[]): ReadonlyMap<string, number> =>
    new Map(
      raceways.flatMap(({ id, place, path }) => {
        const length = path.slice(1).reduce((sum, to, i) => sum + distance(path[i]!, to), 0);
        return place === 'underground' && length > 0 ? [[id, length] as const] : [];
      }),
    ),
);

/** Feet of conduit of the branches of one piece of equipment in each raceway. */
const feetIn = kept(({ homeRuns }: EquipmentBranches): Counts => {
  const feet = new Map<string, number>();
  for (const { homeRun } of homeRuns)
    for (const { along, from, to } of homeRun.pieces) {
      const way = homeRun.ways[along]!;
      way.legs.forEach((id, leg) => {
        const own = Math.min(to, way.at[leg + 1]!) - Math.max(from, way.at[leg]!);
        if (id !== '' && own > 0 && way.places[leg] === 'underground') feet.set(id, (feet.get(id) ?? 0) + own);
      });
    }
  return feet;
});

/** Of a new feeder, of all its sets. */
const feederFeet = kept(({ feeder, path, like }: FeederConduit): Counts => {
  const feet = new Map<string, number>();
  if (feeder.existing === true || path === null) return feet;
  like.forEach(({ id, place }, leg) => {
    const own = distance(path[leg]!, path[leg + 1]!) * feeder.conductor.sets;
    if (place === 'underground') feet.set(id, (feet.get(id) ?? 0) + own);
  });
  return feet;
});
