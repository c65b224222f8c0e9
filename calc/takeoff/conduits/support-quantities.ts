import { kept } from '../../../routing/kept/kept.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Member } from '../../../routing/site/site.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import type { RacewaySupports } from '../../steel/raceway-supports.ts';
import { type OnTrapeze, tiersOf, widthFor } from '../../steel/trapeze.ts';
import { type Aloft, aloftAlong, aloftAt, times, type WorkHeight } from '../high.ts';
import { type Add, addedUp, type Tally, tallying } from '../tally.ts';
import { racewayKinds } from './raceway-quantities.ts';

const trapezeKind = byWords((inches) =>
  takeoffKind({
    item: 'trapeze',
    spec: `${inches} in`,
    unit: 'each',
    basis:
      'channel where conduits overhead hang side by side: as wide as they are with 1 in between and 1-1/2 in to each rod, 36 in at most; at the closest of their code spacings and where the steel is',
  }),
);
const ROD = takeoffKind({
  item: 'threaded rod',
  spec: '3/8 in',
  unit: 'ft',
  basis: 'two for each trapeze, from the steel over it down to it; 2 ft each where no steel is drawn',
});
const CLAMP = takeoffKind({ item: 'beam clamp', spec: '3/8 in', unit: 'each', basis: 'two for each trapeze' });
const STRINGER = takeoffKind({
  item: 'stringer',
  spec: 'channel',
  unit: 'ft',
  basis:
    'those that are drawn, and from steel to steel where conduit overhead would span farther than the code lets it',
});

/** Stringers that are drawn among the members: struts put in for what hangs from them. */
export const stringerQuantities = kept((members: readonly Member[], heights: WorkHeight): Tally => {
  const { add, tally } = tallying();
  for (const { id, from, to, stringer } of members)
    if (stringer) add(STRINGER, id, distance(from, to), aloftAlong([from, to], 'overhead', heights));
  return tally;
});

/** Trapezes for conduits side by side at so many places, with rods and clamps. */
export function addTrapezes(
  conduits: readonly OnTrapeze[],
  rod: number,
  of: string,
  add: Add,
  places: number,
  aloft: Aloft,
): void {
  for (const tier of tiersOf(conduits)) {
    add(trapezeKind(String(widthFor(tier)), ''), of, places, aloft);
    add(ROD, of, places * 2 * rod, times(aloft, 2 * rod));
    add(CLAMP, of, 2 * places, times(aloft, 2));
  }
}

/** What hangs along many raceways. */
export const supportQuantities = kept(
  (all: readonly RacewaySupports[], heights: WorkHeight): Tally =>
    addedUp(all.map((one) => ownQuantities(one, heights))),
);

/** Hangers, trapezes and straps of what hangs along a raceway, and the stringers that carry it where no steel is near. */
const ownQuantities = kept(({ raceway, supports, stringers }: RacewaySupports, heights: WorkHeight): Tally => {
  const { add, tally } = tallying();
  for (const { at, conduits, rod } of supports) {
    const aloft = aloftAt(at[2], heights);
    for (const { id, method, tradeSize } of conduits) add(racewayKinds(method, tradeSize ?? '').support, id, 1, aloft);
    if (conduits.length === 1) {
      const { id, method, tradeSize } = conduits[0]!;
      add(racewayKinds(method, tradeSize ?? '').hanger, id, 1, aloft);
      continue;
    }
    addTrapezes(conduits, rod, raceway.id, add, 1, aloft);
  }
  for (const { from, feet } of stringers) add(STRINGER, raceway.id, feet, times(aloftAt(from[2], heights), feet));
  return tally;
});
