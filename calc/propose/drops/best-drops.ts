import type { DropOrder } from '../../../routing/propose/drops/in-order.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { worthOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { FULL_RATE } from '../panels/charger-amps.ts';
import { equipmentPart } from '../panels/equipment-part.ts';
import { planOf } from '../plan-of.ts';
import type { ProposalWish } from '../proposal.ts';
import { racewaysPart } from '../raceways/raceways-part.ts';
import { withChargers } from './chargers.ts';
import { type DropsPart, dropsPart } from './drops-part.ts';
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

/** Drops hang lower under the steel than is usual where all comes to less by such a share. */
const LOWER_WORTH = 0.005;

/** What drops come to with panels and routes for them. */
interface Worth {
  readonly fails: number;
  readonly dollars: number;
}

interface Tried extends Worth {
  readonly drops: DropsPart;
  readonly order: Order;
}

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
  let best: Tried | null = null;
  for (const order of cordsADrop > 1 ? PAIRS : ORDERS) best = better(best, order);
  if (best === null) return null;
  for (const order of cordsADrop > 1 ? [best.order] : [best.order, INNER])
    best = better(best, { ...order, isLow: true }, best.order.isLow ? 0 : LOWER_WORTH);
  // A ladder is the usual way up; where hanging low takes more than the days of a lift come to, up at the steel.
  best = better(best, { ...best.order, isLow: false, isAtSteel: true });
  return mayGoOn() ? best : null;

  /** What there is, or what is cheaper by such a share. */
  function better(there: Tried, order: Order, worth?: number): Tried;
  function better(there: Tried | null, order: Order, worth?: number): Tried | null;
  function better(there: Tried | null, order: Order, worth = 0): Tried | null {
    if (there !== null && !mayGoOn()) return there;
    const drops = seen.size === 0 ? usual : dropsPart(file, cordsADrop, wanted, order);
    const key = boxesOf(drops);
    if (seen.has(key) || !isLike(drops, usual)) return there;
    seen.add(key);
    const one = comesTo(drops);
    const isBetter =
      there === null ||
      one.fails < there.fails ||
      (one.fails === there.fails && one.dollars < there.dollars * (1 - worth) - 0.005);
    return isBetter ? { drops, order, ...one } : there;
  }

  function comesTo({ file: hung, cords }: DropsPart): Worth {
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
    const { findings, takeoff } = planOf(laid.file);
    return { fails: failsOf(findings).length, dollars: worthOfRows(takeoff, prices) };
  }
}
