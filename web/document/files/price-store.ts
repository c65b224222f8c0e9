import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import type { PriceError, PricesRead } from '../../../calc/prices/read-prices.ts';

interface Prices {
  readonly list: PriceList;
  /** Faults of the file that was to be opened; the list before it stands. */
  readonly errors?: { readonly file: string; readonly errors: readonly PriceError[] } | undefined;
}

const KEPT_AS = 'overrow prices';

/** The price list of this browser: the estimator's once a file was opened, else the invented one. */
export const priceStore = createStore<Prices>(() => ({ list: INVENTED_LIST }));

export const usePrices = <T>(choose: (prices: Prices) => T): T => useStore(priceStore, choose);

/** What reads price files comes when there is one; a supplier's is laid over `over`. */
const read = async (text: string, file: string, over?: PriceList): Promise<PricesRead> =>
  (await import('../../../calc/prices/read-prices.ts')).readPrices(text, file, over);

/** Takes a price file; where it has faults, they are shown and the list before it stands. Rejects where the reader does not come. */
export async function openPrices(text: string, file: string): Promise<boolean> {
  const prices = await read(text, file, priceStore.getState().list);
  if (!prices.ok) {
    priceStore.setState({ errors: { file, errors: prices.errors } });
    return false;
  }
  await takePrices(prices.list);
  return true;
}

/** Takes a list into use and keeps it in this browser, as the file that it would be saved as. */
export async function takePrices(list: PriceList): Promise<void> {
  priceStore.setState({ list, errors: undefined });
  const [{ csv }, { priceSheet }] = await Promise.all([
    import('../../../calc/sheets/csv.ts'),
    import('../../../calc/prices/price-sheet.ts'),
  ]);
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify({ file: list.name, text: csv(priceSheet(list)) }));
  } catch {
    // The list is in use all the same; it is only not kept for the next time.
  }
}

/** Back to the invented list. */
export function dropPrices(): void {
  priceStore.setState({ list: INVENTED_LIST, errors: undefined });
  try {
    localStorage.removeItem(KEPT_AS);
  } catch {
    // Nothing was kept.
  }
}

export const dismissPriceErrors = (): void => priceStore.setState({ errors: undefined });

/** Takes up the list that this browser keeps, if there is one: before anything is priced. */
export async function resumePrices(): Promise<void> {
  try {
    const record: unknown = JSON.parse(localStorage.getItem(KEPT_AS) ?? 'null');
    if (typeof record !== 'object' || record === null || !('text' in record) || !('file' in record)) return;
    const prices = await read(String(record.text), String(record.file));
    if (prices.ok) priceStore.setState({ list: prices.list });
  } catch {
    // What cannot be read is as good as none; the page says whose prices it goes by.
  }
}
