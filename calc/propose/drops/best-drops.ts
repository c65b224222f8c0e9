import type { DropOrder } from '../../../routing/propose/drops/in-order.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { worthOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { lengthIn } from '../in-file.ts';
import { FULL_RATE } from '../panels/charger-amps.ts';
import { equipmentPart } from '../panels/equipment-part.ts';
import { planOf } from '../plan-of.ts';
import type { ProposalWish } from '../proposal.ts';
import { racewaysPart } from '../raceways/raceways-part.ts';
import { withChargers } from './chargers.ts';
import { type DropsPart, dropsPart } from './drops-part.ts';
import { hungLower, levelOf } from './hung-lower.ts';
import { sampleRows } from './sample-rows.ts';

type Order = Omit<DropOrder, 'toward'>;

/** Of straight stalls the same as the usual one. */
const INNER: Order = { isFlipped: false, isInner: true, over: 'middle' };

/** Ways in which drops may stand in order, the usual one first. */
const ORDERS: readonly Order[] = [
  { isFlipped: false, over: 'middle' },
  { isFlipped: false, over: 'heads' },
  { isFlipped: true, over: 'middle' },
  { isFlipped: true, over: 'heads' },
  INNER,
];

/** Ways in which drops for two cords each may stand in order; without one they stand as the fewest cover all. */
const PAIRS: readonly Order[] = [
  { isFlipped: false, over: 'middle' },
  { isFlipped: false, over: 'middle', pairs: 'beside' },
  { isFlipped: false, over: 'heads', pairs: 'beside' },
  { isFlipped: false, over: 'heads', pairs: 'facing' },
];

/** On lots of no more cords than these the ways are told apart by panels and routes for all of them. */
const FEW_CORDS = 130;
/** On lots of no more than these by those of two rows of the lot: what is found to be best there is weighed on the whole. */
const MOST_CORDS = 320;
/** Share of the usual search for routes: enough to tell them apart. */
const EFFORT = 0.2;

/** Drops are tried lower under steel by so many feet each time, and hang so where all comes to less by such a share. */
const LOWER = 0.5;
const LOWER_WORTH = 0.0005;
/** Feet that are farther than they may hang lower anywhere. */
const LOWEST = 100;

/** What drops come to with panels and routes for them. */
interface Worth {
  readonly fails: number;
  readonly dollars: number;
}

interface Tried extends Worth {
  readonly drops: DropsPart;
  readonly order: Order;
  /** With panels and routes. */
  readonly laid: SiteFile;
}

const isLess = (one: Worth, other: Worth): boolean =>
  one.fails < other.fails || (one.fails === other.fails && one.dollars < other.dollars - 0.005);

/**
 * New drops for the stalls that no charger serves: of the ways in which they may stand in order, that in which they come
 * to least with panels and routes for them, fewer failing findings first. Of a large lot two rows tell which that is.
 * Stopped before all are told apart it is the usual one.
 */
export function bestDrops(
  file: SiteFile,
  wish: ProposalWish,
  mayGoOn: () => boolean,
): { readonly usual: DropsPart; readonly best: DropsPart } {
  const { wanted, ...wishes } = wish;
  const { cordsADrop, isBounded = true } = wish;
  const usual = dropsPart(file, cordsADrop, wanted);
  const { length } = usual.cords;
  if (!isBounded || cordsADrop > 2 || length > MOST_CORDS || length === 0) return { usual, best: usual };
  if (length <= FEW_CORDS) return { usual, best: bestOn(file, usual, wish, mayGoOn)?.drops ?? usual };
  const rows = sampleRows(file, new Set(usual.cords.map(({ stall }) => stall)));
  const order = bestOn(rows, dropsPart(rows, cordsADrop), wishes, mayGoOn)?.order;
  const best = order === undefined ? usual : dropsPart(file, cordsADrop, wanted, order);
  return { usual, best: boxesOf(best) !== boxesOf(usual) && isLike(best, usual) && mayGoOn() ? best : usual };
}

/** Where drops hang, to be compared. */
const boxesOf = ({ file }: DropsPart): string => JSON.stringify(file.drops?.map(({ box }) => box));

/** A drop fewer or a stall less is another matter than where they hang; a drop more is none that is wanted. */
const isLike = (one: DropsPart, usual: DropsPart): boolean =>
  one.cords.length === usual.cords.length && (one.file.drops?.length ?? 0) <= (usual.file.drops?.length ?? 0);

/** The best way on a lot for which it is planned, with the usual one first; null where it is stopped on the way. */
function bestOn(
  file: SiteFile,
  usual: DropsPart,
  { cordsADrop, prices, load = FULL_RATE, wanted }: ProposalWish,
  mayGoOn: () => boolean,
): Tried | null {
  const seen = new Set<string>();
  let hasInner = false;
  let best: Tried | null = null;
  for (const order of cordsADrop > 1 ? PAIRS : ORDERS) best = better(best, order);
  if (best === null) return null;
  best = asLow(best);
  // Lower, cords reach from places nearer to the middle between the rows.
  if (cordsADrop === 1 && hasInner) best = better(best, { ...INNER, lower: LOWEST });
  // A ladder is the usual way up; where hanging low takes more than the days of a lift come to, up at the steel.
  best = better(best, { ...best.order, lower: 0, isAtSteel: true });
  return mayGoOn() ? best : null;

  /** What there is, or what is cheaper. */
  function better(there: Tried, order: Order): Tried;
  function better(there: Tried | null, order: Order): Tried | null;
  function better(there: Tried | null, order: Order): Tried | null {
    if (there !== null && !mayGoOn()) return there;
    const drops = seen.size === 0 ? usual : hungBy(order);
    const key = boxesOf(drops);
    if (seen.has(key) || !isLike(drops, usual)) return there;
    seen.add(key);
    if (order === INNER) hasInner = true;
    const one = { drops, order, ...comesTo(drops) };
    return there === null || isLess(one, there) ? one : there;
  }

  /** What there is, as low under steel as comes to less; by the same routes, which another search would blur. */
  function asLow(there: Tried): Tried {
    const least = hungBy({ ...there.order, lower: LOWEST });
    const [from, to] = [levelOf(there.drops.file, file), levelOf(least.file, file)];
    if (from === null || to === null) return better(there, { ...there.order, lower: LOWEST });
    let best = there;
    for (let lower = LOWER; lengthIn(file.units, lower) <= from - to + 1e-3 && mayGoOn(); lower += LOWER) {
      const laid = hungLower(file, there.laid, lower);
      const one = laid && { ...there, ...weighed(laid), laid, order: { ...there.order, lower } };
      if (one === null) break;
      if (isLess(one, best)) best = one;
    }
    if (best.fails === there.fails && best.dollars > there.dollars * (1 - LOWER_WORTH)) return there;
    const drops = hungBy(best.order);
    return isLike(drops, usual) ? { ...best, drops } : there;
  }

  function hungBy(order: Order): DropsPart {
    return dropsPart(file, cordsADrop, wanted, order);
  }

  function weighed(laid: SiteFile): Worth {
    const { findings, takeoff } = planOf(laid);
    return { fails: failsOf(findings).length, dollars: worthOfRows(takeoff, prices) };
  }

  function comesTo({ file: hung, cords }: DropsPart): Worth & Pick<Tried, 'laid'> {
    const { file: fed, fromOf } = equipmentPart(hung, {
      prices,
      cords,
      load: load.kind === 'day' ? FULL_RATE : load,
    });
    const laid = racewaysPart(withChargers(fed, cords, fromOf), prices, () => {}, mayGoOn, {
      isBounded: false,
      answers: 0,
      effort: EFFORT,
    });
    return { laid: laid.file, ...weighed(laid.file) };
  }
}
