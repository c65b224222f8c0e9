import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';

/**
 * Takes pieces of work that are done by whoever is free: this thread from the first on, and a second that runs the same
 * words from the last back. So neighbours, which share what they are made of, are done by the same thread.
 */
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
  /** Its first number says how many pieces are taken from either end: `takenPiece`. */
  readonly taken: BigInt64Array;
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

/** A crew of this thread alone. */
export function alone(pieces: number): Crew {
  let taken = 0;
  const results: unknown[] = [];
  return {
    next: () => (taken < pieces ? taken++ : null),
    done: (result) => results.push(result),
    stop: () => {
      taken = pieces;
    },
    rest: async () => results,
  };
}

/** Pieces taken from the front stand in the lower half of the number, those from the end in the upper. */
const ONE_FROM_END = 1n << 32n;

/**
 * The next piece of so many that nobody has taken, from the front or from the end, which is noted; null where none is
 * left.
 * @param taken shared by who takes; 0 where nobody has taken anything
 */
export function takenPiece(taken: BigInt64Array, pieces: number, isFromEnd: boolean): number | null {
  for (;;) {
    const before = Atomics.load(taken, 0);
    const front = Number(before % ONE_FROM_END);
    const back = Number(before / ONE_FROM_END);
    if (front + back >= pieces) return null;
    const after = before + (isFromEnd ? ONE_FROM_END : 1n);
    if (Atomics.compareExchange(taken, 0, before, after) === before) return isFromEnd ? pieces - 1 - back : front;
  }
}

/** The crew that works for one command, of which the program's file and words are known. */
export function crewOf(file: URL, words: readonly string[]): (pieces: number, isMuch: boolean) => Crew {
  return (pieces, isMuch) => {
    const mine = shared();
    const taken = mine?.taken ?? new BigInt64Array(new SharedArrayBuffer(8));
    const results: unknown[] = [];
    const helper =
      mine === null && isMuch && pieces > 1 && availableParallelism() > 1
        ? helperOf(file, words, { taken, texts }, results)
        : null;
    return {
      next: () => takenPiece(taken, pieces, mine !== null),
      done: (result) => {
        if (mine === null) results.push(result);
        else parentPort!.postMessage(result);
      },
      stop: () => Atomics.store(taken, 0, BigInt(pieces)),
      rest: async () => {
        await helper;
        return results;
      },
    };
  };
}

/**
 * Sheets are written by much code that is used for a second or two, and each thread compiles its own: code is compiled
 * once it was used sixteen times as long as else, and takes in less of what it calls: found by trying, of the flags of
 * Node 20. One that does not know them says so and goes on.
 */
const PATIENT_COMPILER = ['--interrupt-budget=1081344', '--max-inlined-bytecode-size-cumulative=300'];

function helperOf(file: URL, words: readonly string[], crew: Shared, results: unknown[]): Promise<void> {
  for (const flag of PATIENT_COMPILER) setFlagsFromString(flag);
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
