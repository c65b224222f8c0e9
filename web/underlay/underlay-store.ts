import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Point2, Site, Underlay } from '../../routing/site/site.ts';
import type { DocumentStore } from '../document/store.ts';
import { failureWords } from '../words/failure-words.ts';
import { UnderlayFault, type UnderlayPicture } from './painting/picture.ts';
import { keptBytes } from './picked/kept-bytes.ts';
import { readUnderlay } from './reading/read-underlay.ts';
import { underlaysOf } from './underlays.ts';

/** What the hand is to do with the underlay next. */
export type Placing =
  | { readonly kind: 'move' }
  /** Two points whose distance is typed, or that are to lie along an axis. */
  | { readonly kind: 'scale' | 'level'; readonly points: readonly Point2[] };

/** How one underlay of the open site stands; its placing is in the site file. */
export interface UnderlayLayer {
  readonly key: string;
  readonly kind: 'reading' | 'shown' | 'missing' | 'failed';
  readonly picture: UnderlayPicture | null;
  /** What went wrong, or what to do, in words. */
  readonly says: string | null;
}

/** A file that is being read before it is laid down. */
export interface FileReading {
  readonly file: string;
  /** From 0 to 1. */
  readonly share: number;
  readonly stop: () => void;
}

export interface UnderlayState {
  readonly reading: FileReading | null;
  /** Of each underlay of the site, from the lowest up. */
  readonly layers: readonly UnderlayLayer[];
  /** The one that the ledger speaks of and the hand places. */
  readonly chosen: number;
  readonly placing: Placing | null;
}

export interface UnderlayStore extends StoreApi<UnderlayState> {
  /** Takes a picture that was just read, so that it is not read again from what is kept. */
  readonly take: (hash: string, page: number, picture: UnderlayPicture) => void;
  /** A picture could not be drawn. */
  readonly fail: (picture: UnderlayPicture, file: string, error: unknown) => void;
}

const keyOf = ({ hash, page = 1 }: Pick<Underlay, 'hash' | 'page'>): string => `${hash} ${page}`;

/** The underlay that is chosen, in feet; undefined where there is none. */
export const chosenUnderlay = (site: Site, { chosen }: UnderlayState): Underlay | undefined =>
  underlaysOf(site)[chosen];

/** How the chosen underlay stands; undefined where there is none. */
export const chosenLayer = ({ layers, chosen }: UnderlayState): UnderlayLayer | undefined => layers[chosen];

/** Follows the open document: reads what its underlays name from what this browser keeps. */
export function createUnderlayStore(document: DocumentStore): UnderlayStore {
  const store = createStore<UnderlayState>(() => ({ reading: null, layers: [], chosen: 0, placing: null }));
  const byKey = new Map<string, UnderlayLayer>();
  let keys: readonly string[] = [];
  let ready: { readonly key: string; readonly picture: UnderlayPicture } | null = null;

  const publish = (more: Partial<UnderlayState> = {}): void =>
    store.setState({ layers: keys.map((key) => byKey.get(key)!), ...more });

  const become = (key: string, state: Omit<UnderlayLayer, 'key'>): void => {
    const before = byKey.get(key)?.picture;
    byKey.set(key, { key, ...state });
    if (before && before !== state.picture) before.close();
  };

  async function read(underlay: Underlay, key: string): Promise<void> {
    const { file, kind, hash, page = 1 } = underlay;
    const own: UnderlayLayer = { key, kind: 'reading', picture: null, says: `Reading ${file}` };
    byKey.set(key, own);
    // Taken away, or picked again, in the meantime it is no longer waited for.
    const isAwaited = (): boolean => byKey.get(key) === own;
    const end = (state: Omit<UnderlayLayer, 'key'>): void => {
      become(key, state);
      publish();
    };
    try {
      const bytes = await keptBytes(hash, Date.now());
      if (!isAwaited()) return;
      if (!bytes) {
        end({ kind: 'missing', picture: null, says: `This browser does not keep ${file}. Pick it again to see it.` });
        return;
      }
      const picture = await readUnderlay(kind, bytes, page);
      if (isAwaited()) end({ kind: 'shown', picture, says: null });
      else picture.close();
    } catch (error) {
      if (isAwaited()) end({ kind: 'failed', picture: null, says: faultWords(file, error) });
    }
  }

  const follow = (): void => {
    const underlays = underlaysOf(document.getState().file);
    const now = underlays.map(keyOf);
    if (now.length === keys.length && now.every((key, i) => key === keys[i])) return;
    const grew = now.length > keys.length;
    keys = now;
    for (const [key, { picture }] of byKey)
      if (!now.includes(key)) {
        byKey.delete(key);
        picture?.close();
      }
    underlays.forEach((underlay, i) => {
      const key = now[i]!;
      if (byKey.has(key)) return;
      if (ready?.key === key) become(key, { kind: 'shown', picture: ready.picture, says: null });
      else void read(underlay, key);
    });
    ready = null;
    // What was just laid over the others is what one goes on with.
    const last = Math.max(0, now.length - 1);
    publish({ chosen: grew ? last : Math.min(store.getState().chosen, last), placing: null });
  };
  document.subscribe(follow);
  follow();

  return Object.assign(store, {
    take: (hash: string, page: number, picture: UnderlayPicture) => {
      const key = keyOf({ hash, page });
      if (byKey.has(key)) {
        become(key, { kind: 'shown', picture, says: null });
        publish();
      } else ready = { key, picture };
    },
    fail: (picture: UnderlayPicture, file: string, error: unknown) => {
      for (const [key, layer] of byKey)
        if (layer.picture === picture) become(key, { kind: 'failed', picture: null, says: faultWords(file, error) });
      publish();
    },
  });
}

/** Why a file cannot be shown, in a sentence. */
export const faultWords = (file: string, error: unknown): string =>
  error instanceof UnderlayFault
    ? `${file} cannot be laid under the drawing: ${error.message}.`
    : `${file} cannot be laid under the drawing: ${failureWords(error)}`;

const UnderlayContext = createContext<UnderlayStore | null>(null);
export const UnderlayProvider = UnderlayContext.Provider;

export function useUnderlayStore(): UnderlayStore {
  const store = useContext(UnderlayContext);
  if (!store) throw new RangeError('a component that reads the underlay stands outside UnderlayProvider');
  return store;
}

export const useUnderlay = <T>(part: (state: UnderlayState) => T): T => useStore(useUnderlayStore(), part);
