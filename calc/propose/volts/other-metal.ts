import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { bidOfRows } from '../bid-worth.ts';
import { failsOf } from '../forced-words.ts';
import { inTheGround } from '../panels/panel-source.ts';
import { planOf } from '../plan-of.ts';
import { withDropHeld } from './hold-drop.ts';

/** Some feeders of a metal, as their breakers ask for in the ground; all else as it is. */
export function inMetal(file: SiteFile, feeders: ReadonlySet<string>, metal: Metal): SiteFile {
  const { rules } = toSite(file);
  return {
    ...file,
    feeders: (file.feeders ?? []).map((one) =>
      feeders.has(one.id) ? { ...one, conductor: inTheGround(rules, one.breakerAmps, metal) } : one,
    ),
  };
}

/**
 * What a whole would come to with its new feeders of the other metal, everything where it is, the drop held anew: in dollars,
 * and in the worst drop. Nothing is drawn so: it is a choice. Empty where no feeder is new.
 * @param before the site without the proposal
 */
export function otherMetalWords(before: SiteFile, whole: SiteFile, prices: PriceList): readonly string[] {
  const feeders = (whole.feeders ?? []).slice(before.feeders?.length ?? 0);
  const chargers = new Set((whole.chargers ?? []).slice(before.chargers?.length ?? 0).map(({ id }) => id));
  const [first] = feeders;
  if (first === undefined) return [];
  const metal: Metal =
    toSite(whole).feeders.find(({ id }) => id === first.id)!.conductor.metal === 'copper' ? 'aluminum' : 'copper';
  const fresh = new Set(feeders.map(({ id }) => id));
  // Branches may lose anew what the rule leaves them: what is ahead of them is another.
  const free: SiteFile = {
    ...whole,
    chargers: (whole.chargers ?? []).map(({ branchDrop, ...one }) =>
      chargers.has(one.id) || branchDrop === undefined ? one : { ...one, branchDrop },
    ),
  };
  const held = withDropHeld(inMetal(free, fresh, metal), new Set([...fresh, ...chargers]), prices).file;
  const [now, then] = [planOf(whole), planOf(held)];
  const more = bidOfRows(then.takeoff, prices) - bidOfRows(now.takeoff, prices);
  const fails = failsOf(then.findings).length - failsOf(now.findings).length;
  const drop = (planned: typeof now): string =>
    `${Math.max(0, ...planned.circuits.map(({ worstDropPercent }) => worstDropPercent)).toFixed(1)}%`;
  const size = (file: SiteFile): string => {
    const { conductor } = (file.feeders ?? []).find(({ id }) => id === first.id)!;
    const { sets } = conductor;
    return `${sets > 1 ? `${sets} x ` : ''}${conductor.size}`;
  };
  return [
    `With ${feeders.length === 1 ? 'its new feeder' : `its ${feeders.length} new feeders`} of ${metal} (${first.id} ${size(held)} in place of ${size(whole)}) it would come to about $${Math.round(Math.abs(more)).toLocaleString('en-US')} ${more < 0 ? 'less' : 'more'}, the worst drop ${drop(then)} in place of ${drop(now)}${fails > 0 ? `, and ${counted(fails, 'finding')} more would fail` : ''}: a choice that is not taken by itself. ${metal === 'aluminum' ? 'Every terminal that they end at is then to be one that is marked for aluminum.' : ''}`.trim(),
  ];
}
