import { type ComponentType, useEffect, useState } from 'react';
import { failureWords } from '../words/failure-words.ts';

const LATER: (() => Promise<unknown>)[] = [];

/** What stands before any part comes that is not of the first screen. */
let first: Promise<unknown> = Promise.resolve();

/** Parts that are shown from the beginning come when this has settled, so that they do not hold up what is seen first. */
export function after(stands: Promise<unknown>): void {
  first = stands.catch(() => undefined);
}

/** What is not on the first screen: `load` at the first call, or in a quiet moment before (`loadTheRest`). */
export function later<T>(load: () => Promise<T>): () => Promise<T> {
  LATER.push(load);
  return load;
}

/**
 * Has something done with what `load` brings, as soon as the first screen stands. Returns how to undo it, before it has
 * come as well.
 * @param fault told why it did not come
 */
export function whenHere<T>(
  load: () => Promise<T>,
  use: (come: T) => () => void,
  fault: (error: unknown) => void,
): () => void {
  let undo: (() => void) | null = null;
  let gone = false;
  first.then(load).then(
    (come) => {
      if (!gone) undo = use(come);
    },
    (error: unknown) => !gone && fault(error),
  );
  return () => {
    gone = true;
    undo?.();
  };
}

/**
 * A part of the page whose script comes when it is first shown, or in a quiet moment before. Until then nothing stands in its place; where the script does not come, it is said, with a way to try again.
 */
export function whenAsked<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let Part: ComponentType<P> | null = null;
  const come = later(async (): Promise<void> => {
    Part ??= await load();
  });
  return function Asked(props: P) {
    const [, setCome] = useState(false);
    const [fault, setFault] = useState<string | null>(null);
    const [tries, setTries] = useState(0);
    useEffect(() => {
      if (Part) return;
      let gone = false;
      first.then(come).then(
        () => !gone && setCome(true),
        (error: unknown) => !gone && setFault(failureWords(error)),
      );
      return () => {
        gone = true;
      };
    }, [tries]);
    if (Part) return <Part {...props} />;
    if (fault === null) return null;
    const again = (): void => {
      setFault(null);
      setTries(tries + 1);
    };
    return (
      <p role="alert">
        This is not shown: {fault}{' '}
        <button type="button" className="plain" onClick={again}>
          Try again
        </button>
      </p>
    );
  };
}

/** Loads what is not on the first screen, so that nobody waits for it later. What does not come is asked for again when it is shown. */
export async function loadTheRest(): Promise<void> {
  for (const come of LATER) await come().catch(() => undefined);
}
