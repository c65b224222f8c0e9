import { plan } from '../../plan/plan.ts';
import { INVENTED_LIST } from '../../prices/invented-list.ts';
import { priceSheet } from '../../prices/price-sheet.ts';
import { csv } from '../../sheets/csv.ts';
import { wantedLines, wantedSheet } from '../../takeoff/wanted-lines.ts';
import type { Machine } from '../machine.ts';
import { done, type Outcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readSites } from '../sites.ts';

/**
 * `prices`: the built-in list as CSV. `prices FILE...`: the lines that the sites need, with room for their figures; with a
 * list, those that it lacks or has by a guess.
 */
export function pricesVerb(paths: readonly string[], options: { readonly prices?: string }, machine: Machine): Outcome {
  if (paths.length === 0)
    return options.prices === undefined
      ? done(csv(priceSheet(INVENTED_LIST)))
      : wrong('prices --prices: name one site file or more, for what the list lacks of them');
  const prices = pricesIn(options.prices, machine);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const rows = read.sites.flatMap(({ site }) => plan(site).takeoff);
  const lacking = wantedLines(rows, options.prices === undefined ? null : prices.list);
  return done(csv(wantedSheet(lacking)));
}
