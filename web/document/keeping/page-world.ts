import { takeField } from '../../parts/typed.ts';
import { download } from '../files/files.ts';
import type { Room } from './room.ts';
import { openSites, type SiteDatabase } from './store/database.ts';
import { type Mirror, parseMirror } from './store/mirror.ts';
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
  /** Has the browser ask before the page is left, while `isDue`. */
  readonly askBeforeLeaving: (isDue: () => boolean) => void;
  /** Asks the browser not to clear the store; false where it may. */
  readonly persist: () => Promise<boolean>;
  /** Whether the browser has agreed not to clear the store. */
  readonly persisted: () => Promise<boolean>;
  readonly room: () => Promise<Room | null>;
  /** Hands a file to the person as a download. */
  readonly handOut: (fileName: string, text: string) => void;
  readonly now: () => number;
  readonly newDocument: () => string;
}

const TAB_KEY = 'overrow.document';
const MIRROR_KEY = 'overrow.mirror';

/** The world of a browser page. Where the browser refuses small storage, it is as if it were empty. */
export function pageWorld(): PageWorld {
  return {
    openDatabase: openSites,
    tabs: browserTabs(navigator.locks, channel()),
    tabDocument: {
      get: () => quietly(() => sessionStorage.getItem(TAB_KEY)) ?? null,
      set: (doc) => quietly(() => sessionStorage.setItem(TAB_KEY, doc)),
    },
    mirror: {
      get: () => parseMirror(quietly(() => localStorage.getItem(MIRROR_KEY)) ?? null),
      set: (mirror) => quietly(() => localStorage.setItem(MIRROR_KEY, JSON.stringify(mirror))),
    },
    onLeaving: (listener) => {
      const leave = (): void => {
        takeField();
        listener();
      };
      addEventListener('pagehide', leave);
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'hidden') leave();
      });
    },
    askBeforeLeaving: (isDue) => {
      addEventListener('beforeunload', (event) => {
        takeField();
        if (isDue()) event.preventDefault();
      });
    },
    persist: async () => (await navigator.storage?.persist?.()) ?? false,
    persisted: async () => (await navigator.storage?.persisted?.()) ?? false,
    room: async () => {
      const { usage, quota } = (await navigator.storage?.estimate?.()) ?? {};
      return usage === undefined || quota === undefined ? null : { used: usage, of: quota };
    },
    handOut: (fileName, text) => download(fileName, 'application/json', text),
    now: Date.now,
    newDocument: () => {
      const bytes = crypto.getRandomValues(new Uint8Array(12));
      return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    },
  };
}

/** What tabs hear of each other by; null where the browser has none, and each tab is then alone. */
const channel = (): BroadcastChannel | null => quietly(() => new BroadcastChannel('overrow')) ?? null;

// A browser set to keep nothing throws at the first touch.
function quietly<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}
