import type { KeptWork } from './kept-list/kept-work.ts';
import type { Room } from './room.ts';

/** Where the work is. */
export interface Health {
  readonly room: Room | null;
  /** The browser has agreed not to clear its store; null where it was not asked yet. */
  readonly persisted: boolean | null;
  /** When the open site was last written here, and when to its own file, by this machine's clock. */
  readonly wroteAt: number | null;
  readonly savedAt: number | null;
}

/** The keeping of sites in this browser. */
export interface SiteKeeping extends KeptWork {
  /** A site stands on the page: it was brought back, or opened while that was under way. */
  readonly resumed: boolean;
  /** Opens a kept site. False where it cannot be brought back. */
  readonly reopen: (doc: string) => Promise<boolean>;
  /** Keeps the open site even if it is never changed. */
  readonly holdOn: () => Promise<void>;
  readonly health: () => Promise<Health>;
  /** Asks the browser not to clear its store, where it was not asked since the page was opened. */
  readonly askToLast: () => Promise<void>;
  /** Hands out all kept sites in one file. */
  readonly saveAll: () => Promise<void>;
  /** Tells a listener of every kept site that changed, here or in another tab (null: several); returns the way to stop. */
  readonly onChange: (listener: (doc: string | null) => void) => () => void;
  /** Writes down everything at once. */
  readonly flush: () => Promise<void>;
  /** Writes down everything and keeps no more. */
  readonly stop: () => Promise<void>;
}
