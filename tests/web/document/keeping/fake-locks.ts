import type { Locks } from '../../../../web/document/keeping/tabs.ts';

interface Held {
  readonly tab: object;
  readonly drop: (error: DOMException) => void;
}
interface Waiting {
  readonly tab: object;
  readonly grant: () => void;
}

const aborted = (): DOMException => new DOMException('the request was aborted', 'AbortError');

/** Exclusive locks as the Web Locks API specifies them: in order, if available, stolen, called off by a signal. */
export class FakeLocks {
  private readonly held = new Map<string, Held>();
  private readonly queues = new Map<string, Waiting[]>();

  /** The lock manager as one tab sees it. */
  of(tab: object): Locks {
    const request = (name: string, ...rest: unknown[]): Promise<unknown> => {
      const work = rest.pop() as (lock: { name: string } | null) => unknown;
      return this.request(tab, name, (rest[0] ?? {}) as LockOptions, work);
    };
    return { request: request as unknown as Locks['request'] };
  }

  /** A tab is gone: what it held is free, what it waited for is not. */
  forget(tab: object): void {
    for (const [name, queue] of this.queues)
      this.queues.set(
        name,
        queue.filter((one) => one.tab !== tab),
      );
    for (const [name, held] of [...this.held]) if (held.tab === tab) this.free(name, held);
  }

  private request(
    tab: object,
    name: string,
    { ifAvailable = false, steal = false, signal }: LockOptions,
    work: (lock: { name: string } | null) => unknown,
  ): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const grant = (): void => {
        const held: Held = { tab, drop: reject };
        this.held.set(name, held);
        Promise.resolve(work({ name })).then(
          (value) => {
            this.free(name, held);
            resolve(value);
          },
          (error) => {
            this.free(name, held);
            reject(error);
          },
        );
      };
      if (signal?.aborted) {
        reject(aborted());
        return;
      }
      const holder = this.held.get(name);
      if (!holder)
        queueMicrotask(() =>
          this.held.has(name)
            ? this.request(tab, name, { ifAvailable, steal, ...(signal && { signal }) }, work).then(resolve, reject)
            : grant(),
        );
      else if (ifAvailable) Promise.resolve(work(null)).then(resolve, reject);
      else if (steal) {
        this.held.delete(name);
        holder.drop(aborted());
        grant();
      } else {
        const waiting: Waiting = { tab, grant };
        const queue = this.queues.get(name) ?? [];
        this.queues.set(name, [...queue, waiting]);
        signal?.addEventListener('abort', () => {
          const left = (this.queues.get(name) ?? []).filter((one) => one !== waiting);
          if (left.length < (this.queues.get(name) ?? []).length) reject(aborted());
          this.queues.set(name, left);
        });
      }
    });
  }

  private free(name: string, held: Held): void {
    if (this.held.get(name) !== held) return;
    this.held.delete(name);
    const [next, ...rest] = this.queues.get(name) ?? [];
    this.queues.set(name, rest);
    next?.grant();
  }
}
