/** Something that the browser was asked for did not come within its time. */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer';

  constructor() {
    super('its store does not answer');
  }
}

/**
 * What a piece of work comes to, or NoAnswer after `ms` milliseconds. The signal tells the work that nobody waits for it
 * any more: what it opens or takes hold of after that, it must let go of itself.
 */
export async function inTime<T>(ms: number, work: (late: AbortSignal) => Promise<T>): Promise<T> {
  const late = new AbortController();
  let waited: ReturnType<typeof setTimeout> | undefined;
  const tooLate = new Promise<never>((_, reject) => {
    waited = setTimeout(() => {
      late.abort();
      reject(new NoAnswer());
    }, ms);
  });
  const working = work(late.signal);
  working.catch(() => {});
  return Promise.race([working, tooLate]).finally(() => clearTimeout(waited));
}
