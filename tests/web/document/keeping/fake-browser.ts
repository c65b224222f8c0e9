import '../../../../web/document/counted-plan.ts';
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import type { PageWorld } from '../../../../web/document/keeping/page-world.ts';
import type { Room } from '../../../../web/document/keeping/room.ts';
import type { SiteKeeping } from '../../../../web/document/keeping/site-keeping.ts';
import { keepSites } from '../../../../web/document/keeping/storage.ts';
import { openSites, type SiteDatabase } from '../../../../web/document/keeping/store/database.ts';
import type { Mirror } from '../../../../web/document/keeping/store/mirror.ts';
import { browserTabs, type TabMessage } from '../../../../web/document/keeping/tabs.ts';
import { createDocumentStore, type DocumentStore } from '../../../../web/document/store.ts';
import { FakeLocks } from './fake-locks.ts';

/** One open tab with the page in it. */
export interface Tab {
  readonly store: DocumentStore;
  readonly keeping: SiteKeeping;
  /** The page is about to go: `pagehide`. */
  readonly leave: () => void;
  /** Whether the browser would ask before the page is left. */
  readonly asks: () => boolean;
  /** Files that the page has handed out as downloads. */
  readonly handedOut: readonly { readonly fileName: string; readonly text: string }[];
  /** The tab is gone as if its process had been killed: what was not handed to the store is lost. */
  readonly kill: () => void;
  /** The tab no longer hears or answers, but has not gone: as when the browser puts it to sleep. */
  readonly freeze: () => void;
}

type Ear = (event: { readonly data: TabMessage }) => void;

interface Channel {
  readonly ears: Set<Ear>;
  asleep: boolean;
}

/** A browser of which only what the keeping of sites touches is there. What it keeps outlives its tabs. */
export class FakeBrowser {
  now = 1_800_000_000_000;
  persists = true;
  room: Room | null = null;
  mirror: Mirror | null = null;
  readonly locks = new FakeLocks();
  withLocks = true;
  private docs = 0;
  private readonly tabs: Tab[] = [];
  private readonly channels = new Set<Channel>();

  constructor() {
    globalThis.indexedDB = new IDBFactory();
  }

  /** Deletes what the pages have stored, as a browser short of room does. */
  clear(): void {
    globalThis.indexedDB = new IDBFactory();
  }

  /** A connection to the store, to look into it or to spoil it. */
  look(): Promise<SiteDatabase> {
    return openSites(() => {});
  }

  /** The part of the world that a tab sees; `session` is what the tab itself remembers over reloads. */
  world(session: { doc: string | null }): PageWorld & Pick<Tab, 'leave' | 'kill' | 'freeze' | 'asks' | 'handedOut'> {
    const tab = {};
    let isDue = (): boolean => false;
    let dead = false;
    const handedOut: { fileName: string; text: string }[] = [];
    let leaving = (): void => {};
    let connection: SiteDatabase | null = null;
    const own: Channel = { ears: new Set(), asleep: false };
    this.channels.add(own);
    const channel = {
      postMessage: (message: TabMessage) => {
        if (own.asleep) return;
        for (const other of this.channels) {
          if (other === own) continue;
          queueMicrotask(() => {
            if (!other.asleep) for (const ear of [...other.ears]) ear({ data: structuredClone(message) });
          });
        }
      },
      addEventListener: (_: string, ear: Ear) => own.ears.add(ear),
      removeEventListener: (_: string, ear: Ear) => own.ears.delete(ear),
      close: () => this.channels.delete(own),
    };
    return {
      openDatabase: async (onClosed) => {
        if (dead) throw new Error('the tab is gone');
        connection = await openSites(onClosed);
        return connection;
      },
      tabs: browserTabs(this.withLocks ? this.locks.of(tab) : undefined, channel as unknown as BroadcastChannel),
      tabDocument: { get: () => session.doc, set: (doc) => (session.doc = doc) },
      mirror: { get: () => this.mirror, set: (mirror) => (this.mirror = mirror) },
      onLeaving: (listener) => (leaving = listener),
      askBeforeLeaving: (due) => (isDue = due),
      asks: () => isDue(),
      persist: async () => this.persists,
      persisted: async () => false,
      room: async () => this.room,
      handOut: (fileName, text) => handedOut.push({ fileName, text }),
      handedOut,
      now: () => this.now,
      newDocument: () => `doc${++this.docs}`,
      leave: () => leaving(),
      freeze: () => (own.asleep = true),
      kill: () => {
        dead = true;
        own.ears.clear();
        this.channels.delete(own);
        connection?.close();
        this.locks.forget(tab);
      },
    };
  }

  /** Kills every tab, so that none of them goes on writing behind the next test. */
  end(): void {
    for (const tab of this.tabs) tab.kill();
  }

  /** Opens a tab with the page in it, or the same tab again. */
  async open(session: { doc: string | null } = { doc: null }, changes: Partial<PageWorld> = {}): Promise<Tab> {
    const store = createDocumentStore({ warm: async () => {} });
    const world = this.world(session);
    const { leave, kill, freeze, asks, handedOut } = world;
    const keeping = await keepSites(store, { ...world, ...changes });
    const tab: Tab = { store, keeping, leave, kill, freeze, asks, handedOut };
    this.tabs.push(tab);
    return tab;
  }
}

/** Lets everything that is under way in the store and between tabs come to rest. */
export async function settle(): Promise<void> {
  for (let i = 0; i < 200; i++) await new Promise((resolve) => setImmediate(resolve));
}
