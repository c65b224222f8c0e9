import type { DropOrder } from '../../../routing/propose/drops/in-order.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import { worthOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { FULL_RATE } from '../panels/charger-amps.ts';
import { equipmentPart } from '../panels/equipment-part.ts';
import type { ProposalWish } from '../proposal.ts';
import { racewaysPart } from '../raceways/raceways-part.ts';
import { withChargers } from './chargers.ts';
import { type DropsPart, dropsPart } from './drops-part.ts';

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

/** On lots of no more cords than these the ways are told apart by panels and routes for each. */
const MOST_CORDS = 60;
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
 * to least with panels and routes for them, fewer failing findings first. Stopped before all are told apart it is the usual
 * one.
 */
export function bestDrops(
  file: SiteFile,
  { cordsADrop, prices, load = FULL_RATE, isBounded = true, wanted }: ProposalWish,
  mayGoOn: () => boolean,
): { readonly usual: DropsPart; readonly best: DropsPart } {
  const usual = dropsPart(file, cordsADrop, wanted);
  if (!isBounded || cordsADrop > 1 || usual.cords.length > MOST_CORDS || usual.cords.length === 0)
    return { usual, best: usual };
  const seen = new Set<string>();
  let best: Tried | null = null;
  for (const order of ORDERS) best = better(best, order);
  if (best === null) return { usual, best: usual };
  for (const order of [best.order, INNER])
    best = better(best, { ...order, isLow: true }, best.order.isLow ? 0 : LOWER_WORTH);
  // A ladder is the usual way up; where hanging low takes more than the days of a lift come to, up at the steel.
  best = better(best, { ...best.order, isLow: false, isAtSteel: true });
  return { usual, best: mayGoOn() ? best.drops : usual };

  /** What there is, or what is cheaper by such a share. */
  function better(there: Tried, order: Order, worth?: number): Tried;
  function better(there: Tried | null, order: Order, worth?: number): Tried | null;
  function better(there: Tried | null, order: Order, worth = 0): Tried | null {
    if (there !== null && !mayGoOn()) return there;
    const drops = seen.size === 0 ? usual : dropsPart(file, cordsADrop, wanted, order);
    const key = JSON.stringify(drops.file.drops?.map(({ box }) => box));
    // A drop fewer or a stall less is another matter than where they hang.
    if (seen.has(key) || drops.cords.length !== usual.cords.length) return there;
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
    const { findings, takeoff } = plan(toSite(laid.file));
    return { fails: failsOf(findings).length, dollars: worthOfRows(takeoff, prices) };
  }
}
