import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Point2, Underlay } from '../../routing/site/site.ts';
import type { DocumentStore } from '../document/store.ts';
import { keptBytes } from './kept-bytes.ts';
import { UnderlayFault, type UnderlayPicture } from './picture.ts';
import { readUnderlay } from './read-underlay.ts';

/** What the hand is to do with the underlay next. */
export type Placing =
  | { readonly kind: 'move' }
  /** Two points whose distance is typed, or that are to lie along an axis. */
  | { readonly kind: 'scale' | 'level'; readonly points: readonly Point2[] };

/** How the underlay of the open site stands; its placing is in the site file. */
export interface UnderlayState {
  readonly kind: 'none' | 'reading' | 'shown' | 'missing' | 'failed';
  readonly picture: UnderlayPicture | null;
  /** What went wrong, or what to do, in words. */
  readonly says: string | null;
  readonly placing: Placing | null;
}

export interface UnderlayStore extends StoreApi<UnderlayState> {
  /** Takes a picture that was just read, so that it is not read again from what is kept. */
  readonly take: (hash: string, page: number, picture: UnderlayPicture) => void;
}

const NONE: UnderlayState = { kind: 'none', picture: null, says: null, placing: null };

const keyOf = (hash: string, page: number): string => `${hash} ${page}`;

/** Follows the open document: reads what its underlay names from what this browser keeps. */
export function createUnderlayStore(document: DocumentStore): UnderlayStore {
  const store = createStore<UnderlayState>(() => NONE);
  let key: string | null = null;
  let ready: { readonly key: string; readonly picture: UnderlayPicture } | null = null;

  const become = (state: Partial<UnderlayState>): void => {
    const before = store.getState().picture;
    store.setState({ ...NONE, ...state });
    if (before && before !== state.picture) before.close();
  };

  async function read(underlay: Underlay, own: string): Promise<void> {
    const { file, kind, hash, page = 1 } = underlay;
    become({ kind: 'reading', says: `Reading ${file}` });
    try {
      const bytes = await keptBytes(hash, Date.now());
      if (key !== own) return;
      if (!bytes) {
        become({ kind: 'missing', says: `This browser does not keep ${file}. Pick it again to see it.` });
        return;
      }
      const picture = await readUnderlay(kind, bytes, page);
      if (key === own) become({ kind: 'shown', picture });
      else picture.close();
    } catch (error) {
      if (key === own) become({ kind: 'failed', says: faultWords(file, error) });
    }
  }

  const follow = (): void => {
    const { underlay } = document.getState().file;
    const own = underlay ? keyOf(underlay.hash, underlay.page ?? 1) : null;
    if (own === key) return;
    key = own;
    const picture = ready && ready.key === own ? ready.picture : null;
    ready = null;
    if (!underlay || own === null) become({});
    else if (picture) become({ kind: 'shown', picture });
    else void read(underlay, own);
  };
  document.subscribe(follow);
  follow();

  return Object.assign(store, {
    take: (hash: string, page: number, picture: UnderlayPicture) => {
      const own = keyOf(hash, page);
      if (own === key) become({ kind: 'shown', picture });
      else ready = { key: own, picture };
    },
  });
}

/** Why a file cannot be shown, in a sentence. */
export const faultWords = (file: string, error: unknown): string =>
  error instanceof UnderlayFault
    ? `${file} cannot be laid under the drawing: ${error.message}.`
    : `${file} cannot be laid under the drawing: ${error instanceof Error ? error.message : 'it cannot be read'}`;

const UnderlayContext = createContext<UnderlayStore | null>(null);
export const UnderlayProvider = UnderlayContext.Provider;

export function useUnderlayStore(): UnderlayStore {
  const store = useContext(UnderlayContext);
  if (!store) throw new RangeError('a component that reads the underlay stands outside UnderlayProvider');
  return store;
}

export const useUnderlay = <T>(part: (state: UnderlayState) => T): T => useStore(useUnderlayStore(), part);
