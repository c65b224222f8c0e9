import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import { plan } from '../../plan/plan.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { failsOf } from '../forced-words.ts';
import { proposeInPose } from '../in-pose.ts';
import type { Proposal, ProposalWish } from '../proposal.ts';
import { buildPhases, chargerPhases, phasesOf } from './build-phases.ts';
import { phaseFile } from './phase-file.ts';
import { type PhasePrice, phasePrices } from './phase-prices.ts';

/** Larger lots are not proposed phase by phase too, only as a whole. */
const MOST_COMPARED = 120;

const QUIET = (): void => {};
const money = (amount: number): string => `$${amount.toFixed(2)}`;

/**
 * A whole proposal of a lot that is built in phases, with what there is to say of them: what is laid now for later, what
 * each phase costs, whether the lot of each stands by itself, and what it would cost to lay each phase only for itself.
 */
export function withPhases(file: SiteFile, wish: ProposalWish, whole: Proposal, mayGoOn: () => boolean): Proposal {
  const site = toSite(whole.file);
  const phases = phasesOf(site);
  const last = whole.parts.at(-1);
  if (phases.length === 1 || wish.wanted !== undefined || last === undefined) return whole;
  const planned = alternativeOf('', site, wish.prices);
  const prices = phasePrices(planned);
  const alone = isCompared(whole.file, mayGoOn) ? pricesAlone(file, wish, phases, mayGoOn) : null;
  const says = [
    `Built in ${counted(phases.length, 'phase')}, panels, feeders and trunk raceways sized for the last: ${prices
      .map(({ phase, price }) => `${money(price)} in phase ${phase}`)
      .join(', ')}, ${money(planned.cost.price)} in all.`,
    ...nowForLater(planned.site, planned.plan, prices[0]!),
    ...phases.slice(0, -1).flatMap((phase) => standsAlone(whole.file, phase)),
    ...(alone === null ? [] : aloneWords(prices, alone)),
  ];
  return { ...whole, parts: [...whole.parts.slice(0, -1), { ...last, says: [...last.says, ...says] }] };
}

const isCompared = ({ chargers = [] }: SiteFile, mayGoOn: () => boolean): boolean =>
  chargers.length <= MOST_COMPARED && mayGoOn();

/** What is laid with the first phase for later ones. */
function nowForLater(site: Parameters<typeof buildPhases>[0], planned: Plan, first: PhasePrice): readonly string[] {
  const laid = buildPhases(site, planned);
  const own = chargerPhases(site);
  const empty = planned.conduits.filter(
    ({ id, circuits }) => laid.get(id) === 1 && circuits.every((charger) => own.get(charger)! > 1),
  );
  const feet = empty.reduce((sum, { length }) => sum + length, 0);
  const panels = site.equipment.filter(({ id }) => {
    const fed = site.chargers.filter(({ from }) => from === id);
    return laid.get(id) === 1 && fed.some((one) => own.get(one.id)! > 1) && fed.some((one) => own.get(one.id) === 1);
  });
  const spaces = site.chargers.filter(({ id, from }) => own.get(id)! > 1 && panels.some((one) => one.id === from));
  const parts = [
    ...(empty.length > 0
      ? [
          `${counted(empty.length, 'empty conduit')}, ${feet.toFixed(0)} ft, in the trunks (${money(first.forLater)} with boxes)`,
        ]
      : []),
    ...(panels.length > 0
      ? [
          `room for ${counted(spaces.length, 'circuit')} in ${panels.map(({ id }) => id).join(', ')} and in what feeds it`,
        ]
      : []),
  ];
  return parts.length === 0 ? [] : [`Laid in phase 1 for later: ${parts.join('; ')}.`];
}

/** Whether the lot as it stands after a phase is planned without a failing finding. */
function standsAlone(file: SiteFile, phase: number): readonly string[] {
  const fails = failsOf(plan(toSite(phaseFile(file, phase))).findings);
  const what = phase === 1 ? 'Phase 1 alone' : `Phases 1 to ${phase} alone`;
  return [
    fails.length === 0
      ? `${what}: planned by itself, nothing fails.`
      : `${what}: ${counted(fails.length, 'finding fails', 'findings fail')}. ${fails[0]!.says}`,
  ];
}

/** What each phase would cost were it laid for itself, the next on what stands then. */
function pricesAlone(
  file: SiteFile,
  wish: ProposalWish,
  phases: readonly number[],
  mayGoOn: () => boolean,
): readonly number[] | null {
  let next = file;
  let spent = 0;
  const prices: number[] = [];
  for (const phase of phases) {
    const wanted = new Set((file.stalls ?? []).filter((one) => (one.phase ?? 1) <= phase).map(({ id }) => id));
    next = proposeInPose(next, { ...wish, wanted, isBounded: false }, QUIET, QUIET, mayGoOn).file;
    const { price } = alternativeOf('', toSite(next), wish.prices).cost;
    prices.push(price - spent);
    spent = price;
    if (!mayGoOn()) return null;
  }
  return prices;
}

function aloneWords(prices: readonly PhasePrice[], alone: readonly number[]): readonly string[] {
  const sum = (amounts: readonly number[]): number => amounts.reduce((all, one) => all + one, 0);
  const [now, each] = [prices.map(({ price }) => price), alone];
  const [first, all] = [now[0]! - each[0]!, sum(each) - sum(now)];
  const off = (amount: number): string => `${money(Math.abs(amount))} ${amount < 0 ? 'less' : 'more'}`;
  return [
    `Each phase laid for itself alone: ${alone.map((price, i) => `${money(price)} in phase ${prices[i]!.phase}`).join(', ')}. Laid for the last from the beginning, phase 1 costs ${off(first)} and all together ${off(-all)}; closing the lot twice is not counted.`,
  ];
}
