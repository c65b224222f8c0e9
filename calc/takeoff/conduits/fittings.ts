import type { BentTradeSize, Method } from '../../../routing/site/schema/vocabulary.ts';
import { byWords, type TakeoffKind, takeoffKind } from '../../prices/kind.ts';
import { degreesInWords, racewaySpec, STICK } from '../../prices/spec.ts';
import { type Aloft, ON_GROUND, plusAloft, shareAloft, times } from '../high.ts';
import type { Add } from '../tally.ts';
import { elbowsFor, isBent } from './bends.ts';

/** A straight of a conduit, and the corner that it ends in. */
export interface Straight {
  readonly feet: number;
  /** Of them worked off the ground. */
  readonly aloft: Aloft;
  /** Turn at its end, degrees; 0 where the conduit ends. */
  readonly turn: number;
  /** Where the corner is made. */
  readonly turnAloft: Aloft;
}

/** Sticks that come with what joins the next one: belled, or with a coupling screwed on. */
const COMES_JOINED: ReadonlySet<Method> = new Set(['PVC40', 'PVC80', 'RMC', 'IMC']);

interface FittingKinds {
  readonly coupling: TakeoffKind;
  readonly bend: TakeoffKind;
  elbow(degrees: number): TakeoffKind;
}

export const fittingKinds = byWords((method, tradeSize): FittingKinds => {
  const spec = racewaySpec(method as Method, tradeSize === '' ? null : tradeSize);
  const wet = method === 'EMT' ? '; raintight outdoors' : '';
  const joined = COMES_JOINED.has(method as Method)
    ? `sticks come ${method.startsWith('PVC') ? 'belled' : 'with one'}: one at each elbow, and where the method changes`
    : `between the ${STICK} ft sticks from elbow to elbow, and one more than elbows at each corner that has any${wet}`;
  return {
    coupling: takeoffKind({ item: 'coupling', spec, unit: 'each', basis: joined }),
    bend: takeoffKind({
      item: 'field bend',
      spec,
      unit: 'each',
      basis:
        'one at each corner of EMT, IMC and RMC up to the size that is bent on the job, a rule of the site; common practice',
    }),
    elbow: (degrees) => elbowKind(spec, degreesInWords(degrees)),
  };
});

const elbowKind = byWords((spec, degrees) =>
  takeoffKind({
    item: 'elbow',
    spec: `${spec}, ${degrees}`,
    unit: 'each',
    basis: 'at each corner that is not bent on the job: the one made to its angle, or the two that add up to it',
  }),
);

/** A rounding of sums must not start another stick. */
const FULL = 1e-9;

/** Joints in so many feet of sticks. */
export const jointsIn = (feet: number): number => Math.max(0, Math.ceil(feet / STICK - FULL) - 1);

/** A conduit between the fittings that are bought for it. */
interface Unbroken {
  feet: number;
  aloft: Aloft;
}

/**
 * Elbows, bends and couplings of a conduit made of straights, `count` over, bent up to the size `bentTo`.
 * @returns feet of each of the lengths that its sticks are cut for: from elbow to elbow, or the whole where it is bent
 */
export function addFittings(
  method: Method,
  tradeSize: string | null,
  straights: readonly Straight[],
  of: string,
  add: Add,
  bentTo: BentTradeSize,
  count = 1,
): readonly number[] {
  const { coupling, bend, elbow } = fittingKinds(method, tradeSize ?? '');
  const bends = isBent(method, tradeSize, bentTo);
  const comesJoined = COMES_JOINED.has(method);
  const lengths: Unbroken[] = [{ feet: 0, aloft: ON_GROUND }];
  let [couplings, couplingsAloft] = [0, ON_GROUND];
  for (const { feet, aloft, turn, turnAloft } of straights) {
    const length = lengths.at(-1)!;
    length.feet += feet;
    length.aloft = plusAloft(length.aloft, aloft);
    if (turn === 0) continue;
    if (bends) {
      add(bend, of, count, times(turnAloft, count));
      continue;
    }
    const elbows = elbowsFor(turn);
    if (elbows.length === 0) continue;
    for (const degrees of elbows) add(elbow(degrees), of, count, times(turnAloft, count));
    const joints = elbows.length + (comesJoined ? 0 : 1);
    couplings += joints;
    couplingsAloft = plusAloft(couplingsAloft, times(turnAloft, joints));
    lengths.push({ feet: 0, aloft: ON_GROUND });
  }
  if (!comesJoined)
    for (const { feet, aloft } of lengths) {
      const joints = jointsIn(feet);
      couplings += joints;
      couplingsAloft = plusAloft(couplingsAloft, shareAloft(aloft, feet, joints));
    }
  add(coupling, of, couplings * count, times(couplingsAloft, count));
  return lengths.map(({ feet }) => feet).filter((feet) => feet > FULL);
}
