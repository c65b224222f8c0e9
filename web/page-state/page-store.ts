import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Quote } from '../../calc/prices/price-list.ts';
import type { Theme } from '../parts/theme.ts';
import { ALL_DROPS, type BuildFilter } from './build-filter.ts';

/** A quote of which not all may be filled in yet. */
export type QuoteDraft = Omit<Quote, 'material' | 'validUntil'> & {
  readonly material: number | null;
  readonly validUntil?: string | undefined;
};

export const DRAWERS = [
  'runs',
  'margins',
  'one-line',
  'panels',
  'day',
  'takeoff',
  'cost',
  'cuts',
  'alternatives',
  'ways',
  'setting-out',
] as const;
/** The table that is open under the board. */
export type DrawerTable = (typeof DRAWERS)[number];

/** What stands open on the page beside the board, and how the page looks. Never part of the saved file. */
export interface PageState {
  readonly drawer: DrawerTable | null;
  /** Pixels. */
  readonly drawerHeight: number;
  readonly theme: Theme;
  /** The list of keys is open. */
  readonly help: boolean;
  /** What is in the drawing set is being chosen. */
  readonly drawings: boolean;
  /** The list of kept sites is open. */
  readonly keptWork: boolean;
  /** Whether something is looked for by its name. */
  readonly find: boolean;
  /** The records of the field are open: who wrote what, to be sent, taken in and decided. */
  readonly records: boolean;
  /** The address of the pull card that is open, another object each time that one is opened. */
  readonly card: { readonly link: string } | null;
  /** What is written down once whoever writes was asked who that is. */
  readonly unsigned: (() => void) | null;
  /** What is typed in forms and not handed in yet, by form. */
  readonly unsent: ReadonlyMap<string, string>;
  /** A quote that is being filled in. */
  readonly quote: QuoteDraft | null;
  /** What is still open is listed, with the handing over of it. */
  readonly handover: boolean;
  /** Which drops the list of the field shows. */
  readonly buildFilter: BuildFilter;
  /** The charging day by which ways are weighed, where a person named one; null: the hardest. */
  readonly decidingDay: string | null;
  /** Says aloud, to those who listen to the page, what the eye would see. */
  readonly spoken: string;
}

export type PageStore = StoreApi<PageState>;

export const createPageStore = (from: Partial<PageState> = {}): PageStore =>
  createStore<PageState>(() => ({
    drawer: null,
    drawerHeight: 260,
    theme: 'light',
    help: false,
    drawings: false,
    keptWork: false,
    find: false,
    records: false,
    card: null,
    unsigned: null,
    unsent: new Map(),
    quote: null,
    handover: false,
    buildFilter: ALL_DROPS,
    decidingDay: null,
    spoken: '',
    ...from,
  }));

const PageContext = createContext<PageStore | null>(null);

export const PageProvider = PageContext.Provider;

/** The store of the page, for event handlers. */
export function usePageStore(): PageStore {
  const store = useContext(PageContext);
  if (!store) throw new RangeError('a component that reads the page stands outside PageProvider');
  return store;
}

/** Part of the page's state; drawn anew when that part changes. */
export function usePage<T>(part: (state: PageState) => T): T {
  return useStore(usePageStore(), part);
}
