import { beforeEach, describe, expect, it } from 'vitest';
import { beginWork, endWork, type TellWork, workStore } from '../../../web/long-work/work-store.ts';

interface Begun {
  readonly signal: AbortSignal;
  readonly tell: TellWork;
  readonly end: (says: string) => void;
  readonly fail: (error: unknown) => void;
}

const begun = new Map<string, Begun>();
const begin = (what: string): boolean =>
  beginWork(what, (signal, tell) => new Promise((end, fail) => begun.set(what, { signal, tell, end, fail })));
const shown = (): readonly string[] => workStore.getState().works.map(({ what, state }) => `${what} ${state}`);
const settled = (): Promise<void> => new Promise((done) => setTimeout(done));
const stop = (what: string): void => endWork(workStore.getState().works.find((work) => work.what === what)!.id);

beforeEach(() => {
  for (const { id } of workStore.getState().works) endWork(id);
  begun.clear();
});

describe('long work', () => {
  it('runs two at once; the others wait and follow as there is room', async () => {
    for (const what of ['a', 'b', 'c']) expect(begin(what)).toBe(true);
    expect(shown()).toEqual(['a doing', 'b doing', 'c waiting']);
    begun.get('a')!.end('a.pdf');
    await settled();
    expect(shown()).toEqual(['a done', 'b doing', 'c doing']);
    expect(workStore.getState().works[0]!.says).toBe('a.pdf');
  });
  it('tells how far it is, and why it failed in words of its own', async () => {
    begin('a');
    begun.get('a')!.tell('sheet 2 of 9', 2, 9);
    expect(workStore.getState().works[0]).toMatchObject({ says: 'sheet 2 of 9', done: 2, of: 9 });
    begun.get('a')!.fail(new TypeError('Failed to fetch dynamically imported module: https://host/assets/a-1.js'));
    await settled();
    expect(shown()).toEqual(['a failed']);
    expect(workStore.getState().works[0]!.says).toContain('save the site to a file');
    expect(workStore.getState().works[0]!.says).not.toContain('assets');
  });
  it('is stopped at once, and nothing is said of what it still comes to', async () => {
    for (const what of ['a', 'b', 'c']) begin(what);
    stop('a');
    expect(begun.get('a')!.signal.aborted).toBe(true);
    expect(shown()).toEqual(['b doing', 'c doing']);
    begun.get('a')!.tell('late', 1, 1);
    begun.get('a')!.end('late');
    await settled();
    expect(shown()).toEqual(['b doing', 'c doing']);
  });
  it('that waits is stopped before it begins', () => {
    for (const what of ['a', 'b', 'c']) begin(what);
    stop('c');
    stop('a');
    expect(begun.has('c')).toBe(false);
    expect(shown()).toEqual(['b doing']);
  });
  it('is not begun twice, and no more is taken on than may wait', () => {
    expect(begin('a')).toBe(true);
    expect(begin('a')).toBe(false);
    let taken = 1;
    while (taken < 100 && begin(`${taken}`)) taken += 1;
    expect(taken).toBe(14);
  });
  it('done once can be begun again', async () => {
    begin('a');
    begun.get('a')!.end('a.pdf');
    await settled();
    expect(begin('a')).toBe(true);
    expect(shown()).toEqual(['a doing']);
  });
});
