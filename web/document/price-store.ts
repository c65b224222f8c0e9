import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { type PriceError, type PriceList, readPrices } from '../../calc/prices/price-list.ts';

interface Prices {
  readonly list: PriceList;
  /** Faults of the file that was to be opened; the list before it stands. */
  readonly errors?: { readonly file: string; readonly errors: readonly PriceError[] } | undefined;
}

const KEPT_AS = 'overrow prices';

/** The price list of this browser: the estimator's once a file was opened, else the invented one. */
export const priceStore = createStore<Prices>(() => ({ list: kept() ?? INVENTED_LIST }));

export const usePrices = <T>(choose: (prices: Prices) => T): T => useStore(priceStore, choose);

/** Takes a price file; where it has faults, they are shown and the list before it stands. */
export function openPrices(text: string, file: string): boolean {
  const read = readPrices(text, file);
  if (!read.ok) {
    priceStore.setState({ errors: { file, errors: read.errors } });
    return false;
  }
  priceStore.setState({ list: read.list, errors: undefined });
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify({ file, text }));
  } catch {
    // The list is in use all the same; it is only not kept for the next time.
  }
  return true;
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

function kept(): PriceList | undefined {
  try {
    const record: unknown = JSON.parse(localStorage.getItem(KEPT_AS) ?? 'null');
    if (typeof record !== 'object' || record === null || !('text' in record) || !('file' in record)) return undefined;
    const read = readPrices(String(record.text), String(record.file));
    return read.ok ? read.list : undefined;
  } catch {
    return undefined;
  }
}
