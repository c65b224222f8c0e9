import { INVENTED_LIST } from '../prices/invented-list.ts';
import type { PriceList } from '../prices/price-list.ts';
import { dayIn } from '../prices/read-cells.ts';
import { readPrices } from '../prices/read-prices.ts';
import type { Machine } from './machine.ts';

/**
 * The price list in the named file, or the invented one where none is named; or every fault of it. A supplier's list is
 * laid over the invented one. `bidDay` is the day that its quotes are held against,
 * `words` a file of what suppliers' words mean.
 */
export function pricesIn(
  path: string | undefined,
  machine: Machine,
  { bidDay, words }: { readonly bidDay?: string | undefined; readonly words?: string | undefined } = {},
): PricesFound {
  const day = bidDay === undefined ? undefined : dayIn(bidDay);
  if (day === null) return { ok: false, reason: `--bid-day: expected a day such as 2026-12-31, got "${bidDay}"` };
  const known = words === undefined ? undefined : listIn(words, machine, INVENTED_LIST);
  if (known?.ok === false) return known;
  const found = listIn(path, machine, known?.list ?? INVENTED_LIST);
  return found.ok && day !== undefined ? { ok: true, list: { ...found.list, bidDay: day } } : found;
}

type PricesFound = { readonly ok: true; readonly list: PriceList } | { readonly ok: false; readonly reason: string };

function listIn(path: string | undefined, machine: Machine, over: PriceList): PricesFound {
  if (path === undefined) return { ok: true, list: over };
  let text: string;
  try {
    text = machine.read(path);
  } catch (error) {
    return { ok: false, reason: `${path}: cannot be read: ${error instanceof Error ? error.message : String(error)}` };
  }
  const read = readPrices(text, path, over);
  if (read.ok) return read;
  return {
    ok: false,
    reason: read.errors.map(({ place, says }) => `${path}: ${place ? `${place}: ` : ''}${says}`).join('\n'),
  };
}
