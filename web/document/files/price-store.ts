import { useEffect } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import type { PriceError, PricesRead } from '../../../calc/prices/read-prices.ts';

interface Prices {
  readonly list: PriceList;
  /** Faults of the file that was to be opened; the list before it stands. */
  readonly errors?: { readonly file: string; readonly errors: readonly PriceError[] } | undefined;
}

const KEPT_AS = 'overrow prices';

/** What stands until a list has come: it prices nothing. */
const UNREAD: PriceList = { name: '', rows: [], rates: { labor: 0, height: 1, overhead: 0, margin: 0 } };

/** Whether a list is one to price by: until it has come there is none. */
export const hasCome = (list: PriceList): boolean => list !== UNREAD;

/** The price list of this browser: the estimator's once a file was opened, else the invented one; nothing until it has come. */
export const priceStore = createStore<Prices>(() => ({ list: UNREAD }));

/** Asks for the list where it has not come. */
export function usePrices<T>(choose: (prices: Prices) => T): T {
  useEffect(() => void pricesCome().catch(() => undefined), []);
  return useStore(priceStore, choose);
}

let coming: Promise<void> | undefined;

/** The list in use, once it has come: it is no part of the first screen. Asked for again where it did not come. */
export const pricesCome = (): Promise<void> => {
  coming ??= resumePrices().catch((error: unknown) => {
    coming = undefined;
    throw error;
  });
  return coming;
};

/** The list in use. */
export async function pricesInUse(): Promise<PriceList> {
  await pricesCome();
  return priceStore.getState().list;
}

const inventedList = async (): Promise<PriceList> =>
  (await import('../../../calc/prices/invented-list.ts')).INVENTED_LIST;

/** What reads price files comes when there is one; a supplier's is laid over `over`. */
const read = async (text: string, file: string, over?: PriceList): Promise<PricesRead> =>
  (await import('../../../calc/prices/read-prices.ts')).readPrices(text, file, over);

/** Takes a price file; where it has faults, they are shown and the list before it stands. Rejects where the reader does not come. */
export async function openPrices(text: string, file: string): Promise<boolean> {
  const prices = await read(text, file, await pricesInUse());
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

/** Back to the invented list; what suppliers' words mean stays known. */
export async function dropPrices(): Promise<void> {
  const { words = [] } = priceStore.getState().list;
  if (words.length > 0) return takePrices({ ...(await inventedList()), words });
  priceStore.setState({ list: await inventedList(), errors: undefined });
  try {
    localStorage.removeItem(KEPT_AS);
  } catch {
    // Nothing was kept.
  }
}

export const dismissPriceErrors = (): void => priceStore.setState({ errors: undefined });

/** Takes up the list that this browser keeps, or the invented one where there is none. */
async function resumePrices(): Promise<void> {
  const kept = await keptPrices();
  // A file that was opened in the meantime stands.
  const list = kept ?? (await inventedList());
  if (priceStore.getState().list === UNREAD) priceStore.setState({ list });
}

async function keptPrices(): Promise<PriceList | null> {
  try {
    const record: unknown = JSON.parse(localStorage.getItem(KEPT_AS) ?? 'null');
    if (typeof record !== 'object' || record === null || !('text' in record) || !('file' in record)) return null;
    const prices = await read(String(record.text), String(record.file));
    return prices.ok ? prices.list : null;
  } catch {
    // What cannot be read is as good as none; the page says whose prices it goes by.
    return null;
  }
}
