import { isMainThread, Worker, workerData } from 'node:worker_threads';

/** Verbs that work long, and end with the best so far when they are interrupted. */
const LONG: readonly (string | undefined)[] = ['propose', 'study'];

interface Shared {
  /** Its first number is 1 once somebody interrupts. */
  readonly stop: Int32Array;
  readonly isTerminal: boolean;
}

const shared = (): Shared | null => (isMainThread ? null : (workerData as Shared));

/** Whether somebody looks on at what standard error says. */
export const isWatched = (): boolean => shared()?.isTerminal ?? process.stderr.isTTY === true;

/** Whether work may go on: until so many seconds, or a share of them, have passed, or an interrupt. */
export function mayGoOn(seconds: number | null): (share?: number) => boolean {
  const begun = performance.now();
  const most = seconds === null ? Number.POSITIVE_INFINITY : 1000 * seconds;
  const stop = shared()?.stop;
  return (share = 1) => performance.now() - begun < share * most && (stop === undefined || Atomics.load(stop, 0) === 0);
}

/** Status of a command that is interrupted twice, as shells have it. */
const INTERRUPTED = 130;

/**
 * Runs the same command in a thread of its own where it works long, so that an interrupt is heard while it works: the
 * first asks it to end with the best so far, the second ends it. False where the command is not such a one.
 */
export function runApart(file: URL, words: readonly string[]): boolean {
  if (!isMainThread || !LONG.includes(words[0]) || words.includes('--help') || words.includes('-h')) return false;
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const isTerminal = process.stderr.isTTY === true;
  const worker = new Worker(file, { argv: [...words], workerData: { stop, isTerminal } satisfies Shared });
  worker.on('exit', (status) => {
    process.exitCode = status;
  });
  worker.on('error', (error) => {
    process.stderr.write(`${error.stack ?? error.message}\n`);
    process.exitCode = 1;
  });
  process.on('SIGINT', () => {
    if (Atomics.exchange(stop, 0, 1) === 1) process.exit(INTERRUPTED);
    process.stderr.write('\nEnding with the best so far; once more ends at once.\n');
  });
  return true;
}
