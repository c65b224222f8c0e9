/** What the tabs of one browser tell each other. */
export type TabMessage =
  /** The store has a document up to an entry; `order` is its place among all. */
  | { readonly kind: 'wrote'; readonly doc: string; readonly seq: number; readonly order?: number }
  /** The list of kept sites is not what it was: one was renamed, put into the bin, deleted. */
  | { readonly kind: 'listed'; readonly doc: string }
  /** A tab asks the one that edits a document to finish writing it. */
  | { readonly kind: 'hand-over'; readonly doc: string }
  /** And is told that it has. */
  | { readonly kind: 'handed-over'; readonly doc: string };

/** The right to write one document, held by one tab at a time. */
export interface Claim {
  readonly release: () => void;
}

/** `if-free`: now or not at all; `when-free`: as soon as no other tab holds it; `now`: taken from whoever does. */
export type ClaimWay = 'if-free' | 'when-free' | 'now';

export interface Tabs {
  /** The claim, or null where it was not to be had or the wait for it was called off. `onLost`: another tab took it. */
  readonly claim: (doc: string, way: ClaimWay, onLost: () => void, callOff?: AbortSignal) => Promise<Claim | null>;
  readonly tell: (message: TabMessage) => void;
  /** Hears what other tabs tell from now on; returns the way to stop. */
  readonly hear: (listener: (message: TabMessage) => void) => () => void;
  readonly close: () => void;
}

/** The part of the browser's lock manager that is used. */
export type Locks = Pick<LockManager, 'request'>;

/**
 * The tabs of this browser. Without a lock manager (a page that was not fetched safely has none) every claim is
 * granted; that two tabs wrote one document then shows when the second write is refused. Without a channel they do not
 * hear of each other.
 */
export function browserTabs(locks: Locks | undefined, channel: BroadcastChannel | null): Tabs {
  return {
    claim: (doc, way, onLost, callOff) =>
      locks ? claimWith(locks, `overrow ${doc}`, way, onLost, callOff) : Promise.resolve({ release: () => {} }),
    tell: (message) => channel?.postMessage(message),
    hear: (listener) => {
      if (!channel) return () => {};
      const heard = (event: MessageEvent): void => {
        const message = messageOf(event.data);
        if (message) listener(message);
      };
      channel.addEventListener('message', heard);
      return () => channel.removeEventListener('message', heard);
    },
    close: () => channel?.close(),
  };
}

/** How long a tab that is asked to hand a document over has to finish, in milliseconds. */
export const HAND_OVER_MS = 1_500;

/** Asks the tab that edits a document to finish; resolves when it has, or when it has had long enough. */
export function askToHandOver(tabs: Tabs, doc: string): Promise<void> {
  return new Promise((go) => {
    const done = (): void => {
      clearTimeout(waited);
      stop();
      go();
    };
    const waited = setTimeout(done, HAND_OVER_MS);
    const stop = tabs.hear((message) => {
      if (message.kind === 'handed-over' && message.doc === doc) done();
    });
    tabs.tell({ kind: 'hand-over', doc });
  });
}

function claimWith(
  locks: Locks,
  name: string,
  way: ClaimWay,
  onLost: () => void,
  callOff?: AbortSignal,
): Promise<Claim | null> {
  const options: LockOptions =
    way === 'if-free' ? { ifAvailable: true } : way === 'now' ? { steal: true } : callOff ? { signal: callOff } : {};
  return new Promise((answer) => {
    let holding = false;
    locks
      .request(name, options, (lock) => {
        if (!lock) {
          answer(null);
          return;
        }
        return new Promise<void>((free) => {
          holding = true;
          answer({
            release: () => {
              holding = false;
              free();
            },
          });
        });
      })
      .catch(() => {
        // The wait was called off, or another tab took the claim while it was held.
        if (holding) onLost();
        else answer(null);
      });
  });
}

function messageOf(data: unknown): TabMessage | null {
  if (typeof data !== 'object' || data === null) return null;
  const { kind, doc, seq, order } = data as Readonly<Record<string, unknown>>;
  if (typeof doc !== 'string') return null;
  if (kind === 'wrote') {
    if (typeof seq !== 'number') return null;
    return { kind, doc, seq, ...(typeof order === 'number' && { order }) };
  }
  return kind === 'listed' || kind === 'hand-over' || kind === 'handed-over' ? { kind, doc } : null;
}
