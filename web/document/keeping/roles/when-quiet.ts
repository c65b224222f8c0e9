/** Work that waits until nobody has asked for it for a while, but not for ever. */
export interface WhenQuiet {
  readonly ask: () => void;
  readonly stop: () => void;
}

/** Does the work `quietMs` after it was last asked for, at the latest `latestMs` after the first time. */
export function whenQuiet(work: () => void, quietMs: number, latestMs: number): WhenQuiet {
  let quiet: ReturnType<typeof setTimeout> | undefined;
  let latest: ReturnType<typeof setTimeout> | undefined;
  const stop = (): void => {
    clearTimeout(quiet);
    clearTimeout(latest);
    quiet = undefined;
    latest = undefined;
  };
  const go = (): void => {
    stop();
    work();
  };
  return {
    ask: () => {
      clearTimeout(quiet);
      quiet = setTimeout(go, quietMs);
      latest ??= setTimeout(go, latestMs);
    },
    stop,
  };
}
