import { openSites, type SiteDatabase } from './database.ts';
import { type Mirror, parseMirror } from './mirror.ts';
import { browserTabs, type Tabs } from './tabs.ts';

/** What the keeping of sites needs of the page it runs in. */
export interface PageWorld {
  readonly openDatabase: (onClosed: (why: 'newer' | 'lost') => void) => Promise<SiteDatabase>;
  readonly tabs: Tabs;
  /** The document that this tab had open before it was reloaded. */
  readonly tabDocument: { readonly get: () => string | null; readonly set: (doc: string) => void };
  /** A small record apart from the store, by which the loss of the store is noticed. */
  readonly mirror: { readonly get: () => Mirror | null; readonly set: (mirror: Mirror) => void };
  /** Calls back when the page may be about to go. */
  readonly onLeaving: (listener: () => void) => void;
  /** Asks the browser not to clear the store; false where it may. */
  readonly persist: () => Promise<boolean>;
  readonly now: () => number;
  readonly newDocument: () => string;
}

const TAB_KEY = 'overrow.document';
const MIRROR_KEY = 'overrow.mirror';

/** The world of a browser page. Where the browser refuses small storage, it is as if it were empty. */
export function pageWorld(): PageWorld {
  return {
    openDatabase: openSites,
    tabs: browserTabs(navigator.locks, new BroadcastChannel('overrow')),
    tabDocument: {
      get: () => quietly(() => sessionStorage.getItem(TAB_KEY)) ?? null,
      set: (doc) => quietly(() => sessionStorage.setItem(TAB_KEY, doc)),
    },
    mirror: {
      get: () => parseMirror(quietly(() => localStorage.getItem(MIRROR_KEY)) ?? null),
      set: (mirror) => quietly(() => localStorage.setItem(MIRROR_KEY, JSON.stringify(mirror))),
    },
    onLeaving: (listener) => {
      addEventListener('pagehide', listener);
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'hidden') listener();
      });
    },
    persist: async () => (await navigator.storage?.persist?.()) ?? false,
    now: Date.now,
    newDocument: () => {
      const bytes = crypto.getRandomValues(new Uint8Array(12));
      return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    },
  };
}

// A browser set to keep nothing throws at the first touch.
function quietly<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}
