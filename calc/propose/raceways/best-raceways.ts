import { runsOf } from '../../../routing/network/runs.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { bidOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { planOf } from '../plan-of.ts';
import { type LaidRaceways, type RacewaysEffort, racewaysPart } from './raceways-part.ts';

interface Weighed {
  readonly laid: LaidRaceways;
  readonly fails: number;
  readonly dollars: number;
}

/** Whether some circuits lie in raceways already, whose conduits may have room. */
export function fillsStanding(file: SiteFile): boolean {
  const site = toSite(file);
  return site.raceways.length > 0 && runsOf(site).runs.some(({ length }) => length !== null);
}

/**
 * Raceways for what has no run, of what a search begins with, what it finds, and what it finds where standing conduits are
 * not filled first: that whose plan fails least and then has the least bid. What is stopped on its way is taken only where
 * a longer search would go on from it: so none gives a dearer answer than a shorter one.
 */
export function bestRaceways(
  file: SiteFile,
  prices: PriceList,
  tell: (done: number, of: number) => void,
  mayGoOn: () => boolean,
  effort: Pick<RacewaysEffort, 'isBounded' | 'answers'>,
): LaidRaceways {
  const weighed = (laid: LaidRaceways): Weighed => {
    const { findings, takeoff } = planOf(laid.file);
    return { laid, fails: failsOf(findings).length, dollars: bidOfRows(takeoff, prices) };
  };
  // The lines that are looked at are the same: so is the least that any routes along them cost, which is told once.
  let best = weighed(racewaysPart(file, prices, () => {}, mayGoOn, { ...effort, isSearched: false, answers: 0 }));
  const tries: readonly RacewaysEffort[] = fillsStanding(file) ? [effort, { ...effort, isFilling: false }] : [effort];
  for (const [i, own] of tries.entries()) {
    if (!mayGoOn()) break;
    const told = (done: number, of: number): void => tell(i * of + done, tries.length * of);
    const one = weighed(racewaysPart(file, prices, told, mayGoOn, own));
    const isBetter = one.fails < best.fails || (one.fails === best.fails && one.dollars <= best.dollars);
    if (one.laid.proposal.isSteady && isBetter) best = one;
  }
  return best.laid;
}
