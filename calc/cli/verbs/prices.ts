import { plan } from '../../plan/plan.ts';
import { INVENTED_LIST } from '../../prices/invented-list.ts';
import { nearLines } from '../../prices/near-lines.ts';
import { meansOf, priceSheet } from '../../prices/price-sheet.ts';
import { csv } from '../../sheets/csv.ts';
import { type WantedLine, wantedLines, wantedSheet } from '../../takeoff/bid/wanted-lines.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readSites } from '../sites.ts';

/**
 * `prices`: the built-in list as CSV. `prices FILE...`: the lines that the sites need, with room for their figures; with a
 * list, those that it lacks or has by a guess. With `supplier`, the words of that list that are not known.
 */
export function pricesVerb(
  paths: readonly string[],
  options: { readonly prices?: string; readonly supplier?: string; readonly words?: string },
  machine: Machine,
): VerbOutcome {
  if (options.supplier !== undefined) return askedWords(paths, options.supplier, options, machine);
  if (options.words !== undefined) return wrong('prices --words: goes with --supplier');
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

/**
 * The lines of a supplier's list that nobody has said the meaning of, as a file to fill in: what stands near is told, among
 * what the sites need, or all that the built-in list has where none is named.
 */
function askedWords(
  paths: readonly string[],
  supplier: string,
  { words }: { readonly words?: string },
  machine: Machine,
): VerbOutcome {
  const prices = pricesIn(supplier, machine, { words });
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const needed = wantedLines(
    read.sites.flatMap(({ site }) => plan(site).takeoff),
    null,
  );
  const lines: readonly Pick<WantedLine, 'item' | 'spec' | 'unit'>[] = needed.length > 0 ? needed : INVENTED_LIST.rows;
  const { words: known = [], unknown = [] } = prices.list;
  return done(
    csv([
      ['item', 'spec', 'unit', 'material', 'hours', 'means', 'part', 'a unit ($)', 'near'],
      ...known.map((word) => ['called', word.theirs, null, 0, 0, meansOf(word)]),
      ...unknown.map(({ theirs, part = null, unit, material }) => [
        'called',
        theirs,
        unit,
        0,
        0,
        null,
        part,
        material,
        nearLines(`${theirs} ${part ?? ''}`, unit, lines)
          .map(({ line }) => `${line.item}, ${line.spec}`)
          .join(' | '),
      ]),
    ]),
  );
}
