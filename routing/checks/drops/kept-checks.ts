import { type Box, NO_BOX } from '../../plane/box.ts';
import { flattened, keptNearby } from '../../plane/kept-nearby.ts';
import { type CordField, changesBetween } from '../../reach/field.ts';
import type { Now } from '../../reach/kept-reach.ts';
import type { Shared } from '../../reach/shared.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Drop, Raceway, Stall } from '../../site/site.ts';
import { dropHeadroom, racewayHeadroom } from './clear-height.ts';
import { dropFindings } from './drop-findings.ts';

const NOTHING: readonly Finding[] = [];

/** The one list that stands for no findings, where there are none. */
const someOf = (findings: readonly Finding[]): readonly Finding[] => (findings.length === 0 ? NOTHING : findings);

/** So low that the stalls under it matter. */
const isLow = (z: number, { rules }: Shared): boolean => z < Math.max(rules.clearHeight.stall, rules.clearHeight.van);

/** Places of the elements that are low, where the stalls are others. */
const lowOnes = <T>(
  stalls: readonly Stall[],
  before: readonly Stall[],
  elements: readonly T[],
  low: (element: T) => boolean,
): readonly number[] => (stalls === before ? [] : elements.flatMap((element, i) => (low(element) ? i : [])));

/** The point of the plan at which a vehicle matters to a drop. */
function pointOf({ box, retractor }: Drop): Box {
  const [x, y] = retractor ?? box;
  return { minX: x, minY: y, maxX: x, maxY: y };
}

const drops = keptNearby({
  work: ([drop]: readonly [Drop], [field, shared, stalls]: readonly [CordField, Shared, readonly Stall[]]) =>
    someOf([...dropFindings(drop, field, shared), ...dropHeadroom(drop, { shared, stalls })]),
  near: (_, drop) => pointOf(drop),
  stale: ([field, shared, stalls], [fieldBefore, sharedBefore, stallsBefore], _, list) => {
    const boxes = shared === sharedBefore ? changesBetween(fieldBefore, field) : null;
    const low = ({ box, retractor = box }: Drop): boolean => isLow(Math.min(retractor[2], box[2]), shared);
    return boxes && { boxes, places: lowOnes(stalls, stallsBefore, list, low) };
  },
});

const raceways = keptNearby({
  work: ([raceway]: readonly [Raceway], [shared, stalls]: readonly [Shared, readonly Stall[]]) =>
    someOf(racewayHeadroom(raceway, { shared, stalls })),
  near: () => NO_BOX,
  stale: ([shared, stalls], [sharedBefore, stallsBefore], _, list) => {
    const low = ({ place, path }: Raceway): boolean => place === 'overhead' && path.some(([, , z]) => isLow(z, shared));
    return shared === sharedBefore ? { boxes: [], places: lowOnes(stalls, stallsBefore, list, low) } : null;
  },
});

/** Findings of the drops, each by itself. */
export const dropChecks = (list: readonly Drop[], { field, shared, site: { stalls } }: Now): readonly Finding[] =>
  flattened(drops([list], [field, shared, stalls]));

/** Findings of the raceways over the ground under them. */
export const racewayChecks = (list: readonly Raceway[], { shared, site: { stalls } }: Now): readonly Finding[] =>
  flattened(raceways([list], [shared, stalls]));
