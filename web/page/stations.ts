import type { Station } from '../document/document-state.ts';
import type { DrawerTable } from '../page-state/page-store.ts';

/** What a person does at each station, and the table that lies open there. */
export const STATION_WORDS: Readonly<Record<Station, { readonly name: string; readonly drawer: DrawerTable | null }>> =
  {
    layout: { name: 'Lay out', drawer: null },
    price: { name: 'Price', drawer: 'cost' },
    build: { name: 'Build', drawer: 'setting-out' },
  };
