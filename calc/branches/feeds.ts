import { kept } from '../../routing/kept/kept.ts';
import { type Partition, partitionBy } from '../../routing/kept/parts.ts';
import type { Charger } from '../../routing/site/site.ts';

/** Chargers by the equipment that feeds them. */
export interface Feeds {
  /** Ids of the equipment that feeds any, in the order in which the chargers name them. */
  readonly equipment: readonly string[];
  readonly partition: Partition;
  /** Of each piece of equipment. */
  readonly chargers: readonly (readonly Charger[])[];
  /** Drops with chargers that different equipment feeds. */
  readonly sharedDrops: ReadonlySet<string>;
}

/** The chargers of a site by what feeds them; one answer for one list of chargers. */
export const feedsOf = kept((chargers: readonly Charger[]): Feeds => {
  const { keys, partition } = partitionBy(chargers, ({ from }) => from);
  const feederOf = new Map<string, string>();
  const sharedDrops = new Set<string>();
  for (const { drop, from } of chargers) {
    const other = feederOf.get(drop);
    if (other === undefined) feederOf.set(drop, from);
    else if (other !== from) sharedDrops.add(drop);
  }
  return {
    equipment: keys,
    partition,
    chargers: partition.places.map((places) => places.map((place) => chargers[place]!)),
    sharedDrops,
  };
});
