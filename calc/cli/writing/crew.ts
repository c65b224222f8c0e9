import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';

/** Takes pieces of work that are done by whoever is free: this thread, and a second that runs the same words. */
export interface Crew {
  /** The next piece that nobody has taken, counted from 0; null where none is left. */
  readonly next: () => number | null;
  /** Hands in what a piece came to: plain data. */
  readonly done: (result: unknown) => void;
  /** No piece is begun any more. */
  readonly stop: () => void;
  /** All that was handed in, in no order, once the other thread is at rest; throws what that has thrown. */
  readonly rest: () => Promise<readonly unknown[]>;
}

interface Shared {
  /** Its first number is the next piece. */
  readonly taken: Int32Array;
  /** What was read, so that both threads write what stood there once. */
  readonly texts: ReadonlyMap<string, string>;
}

const shared = (): Shared | null =>
  isMainThread ? null : ((workerData as { readonly crew?: Shared } | null)?.crew ?? null);

/** Whether this is the second thread of a crew: it prints nothing. */
export const isHelper = (): boolean => shared() !== null;

const texts = new Map<string, string>();

/** Reads a text, and keeps it for the second thread, which reads none itself. */
export function readForCrew(path: string, read: (path: string) => string): string {
  const text = shared()?.texts.get(path) ?? read(path);
  texts.set(path, text);
  return text;
}

/** The crew that works for one command, of which the program's file and words are known. */
export function crewOf(file: URL, words: readonly string[]): (pieces: number, isMuch: boolean) => Crew {
  return (pieces, isMuch) => {
    const mine = shared();
    const taken = mine?.taken ?? new Int32Array(new SharedArrayBuffer(4));
    const results: unknown[] = [];
    const helper =
      mine === null && isMuch && pieces > 1 && availableParallelism() > 1
        ? helperOf(file, words, { taken, texts }, results)
        : null;
    return {
      next: () => {
        const piece = Atomics.add(taken, 0, 1);
        return piece < pieces ? piece : null;
      },
      done: (result) => {
        if (mine === null) results.push(result);
        else parentPort!.postMessage(result);
      },
      stop: () => Atomics.store(taken, 0, pieces),
      rest: async () => {
        await helper;
        return results;
      },
    };
  };
}

function helperOf(file: URL, words: readonly string[], crew: Shared, results: unknown[]): Promise<void> {
  const helper = new Worker(file, { argv: [...words], workerData: { crew, isTerminal: false } });
  const end = new Promise<void>((resolve, reject) => {
    helper.on('message', (result) => results.push(result));
    helper.on('error', reject);
    helper.on('exit', () => resolve());
  });
  // What it throws is told when it is waited for, and by nobody before.
  end.catch(() => {});
  return end;
}
