import type { DocumentStore } from '../store.ts';
import * as says from './keeping-words.ts';
import type { PageWorld } from './page-world.ts';
import { lowStorage } from './room.ts';

/** Whether what is kept will last: the browser's leave to keep it, and the room there is. */
export interface Lasting {
  /** The browser has agreed not to clear its store; null where it was not asked yet. */
  readonly persisted: () => boolean | null;
  /** Asks it, once. */
  readonly ask: () => Promise<void>;
  /** Says that everything is kept, and whether the browser may clear it. */
  readonly sayKept: () => void;
  /** Says once that room runs short, while there is still some. */
  readonly lookAtRoom: () => Promise<void>;
}

/** What of its lasting is asked and told in one tab; `saveAll` hands out all kept sites in one file. */
export function lasting(store: DocumentStore, world: PageWorld, saveAll: () => Promise<void>): Lasting {
  let persisted: boolean | null = null;
  let saidNearlyFull = false;
  const sayKept = (): void => store.setKeeping({ kind: 'kept', ...(persisted === false && { says: says.MAY_CLEAR }) });
  return {
    persisted: () => persisted,
    ask: async () => {
      if (persisted !== null) return;
      // Until it is answered, so that it is asked once.
      persisted = true;
      persisted = await world.persist().catch(() => false);
      if (store.getState().keeping.kind === 'kept') sayKept();
    },
    sayKept,
    lookAtRoom: async () => {
      const left = lowStorage(await world.room().catch(() => null));
      if (left === null || saidNearlyFull) return;
      saidNearlyFull = true;
      const acts = [{ name: 'Save all kept sites in one file', act: () => void saveAll() }];
      store.getState().warn({ says: says.nearlyFullSays(left), acts });
    },
  };
}
