import type { DropOrder } from '../../routing/propose/drops/in-order.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import { withChargers } from './chargers.ts';
import { type DropsPart, dropsPart } from './drops-part.ts';
import { failsOf } from './forced-words.ts';
import { FULL_RATE } from './panels/charger-amps.ts';
import { equipmentPart } from './panels/equipment-part.ts';
import { dollarsOf } from './panels/trial-price.ts';
import type { ProposalWish } from './proposal.ts';
import { racewaysPart } from './raceways-part.ts';

/** Ways in which drops may stand in order, the usual one first. */
const ORDERS: readonly Pick<DropOrder, 'isFlipped' | 'over'>[] = [
  { isFlipped: false, over: 'middle' },
  { isFlipped: false, over: 'heads' },
  { isFlipped: true, over: 'middle' },
  { isFlipped: true, over: 'heads' },
];

/** On lots of no more cords than these the ways are told apart by panels and routes for each. */
const MOST_CORDS = 60;
/** Share of the usual search for routes: enough to tell them apart. */
const EFFORT = 0.2;

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
  let best = usual;
  let least: ReturnType<typeof comesTo> | null = null;
  for (const [i, order] of ORDERS.entries()) {
    const drops = i === 0 ? usual : dropsPart(file, cordsADrop, wanted, order);
    // A drop fewer or a stall less is another matter than where they hang.
    if (drops.cords.length !== usual.cords.length) continue;
    const one = comesTo(drops);
    if (!mayGoOn()) return { usual, best: usual };
    if (
      least !== null &&
      !(one.fails < least.fails || (one.fails === least.fails && one.dollars < least.dollars - 0.005))
    )
      continue;
    [best, least] = [drops, one];
  }
  return { usual, best };

  function comesTo({ file: hung, cords }: DropsPart): { readonly fails: number; readonly dollars: number } {
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
    return { fails: failsOf(findings).length, dollars: dollarsOf(takeoff, prices) };
  }
}
