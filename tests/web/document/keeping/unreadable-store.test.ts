import { describe, expect, test, vi } from 'vitest';
import { SMALL } from '../small-site.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf } from './kept-tab.ts';
import { pass, sampleIn } from './unreadable-parts.ts';

browserForEach();

const fails = (error: unknown) => () => {
  throw error;
};
/** A request that is never answered. */
const silent = Object.assign(Object.create(IDBRequest.prototype), { addEventListener: () => {} }) as IDBRequest;
const lostFile = (): DOMException => new DOMException('Failed to read large IndexedDB value', 'DataError');

/** A tab with work in it that has gone; its session. */
async function worked(): Promise<{ doc: string | null }> {
  const session = { doc: null };
  const tab = await browser.open(session);
  await stateOf(tab).openFile(SMALL);
  move(tab);
  move(tab);
  await tab.keeping.flush();
  tab.kill();
  return session;
}

async function kept(doc: string) {
  const database = await browser.look();
  const record = await database.get('documents', doc);
  const log = (await database.getAll('log')).filter((entry) => entry.doc === doc);
  database.close();
  return { record, log };
}

describe('a store that opens and cannot be read', () => {
  test('does not keep the page from opening, is left as it is, and new work is kept beside it', async () => {
    const session = await worked();
    const before = await kept('doc1');
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(fails(lostFile()));
    const tab = await browser.open(session);
    expect(tab.keeping.resumed).toBe(false);
    expect(stateOf(tab).alerts.map(({ says }) => says)).toEqual([
      'The sites that this browser keeps could not be read (Failed to read large IndexedDB value). Nothing of them was ' +
        'changed. Reading them is tried again while this page is open.',
    ]);
    await sampleIn(tab);
    expect(stateOf(tab).keeping.kind).toBe('kept');
    move(tab, 9);
    await tab.keeping.flush();
    expect(stateOf(tab).keeping.kind).toBe('kept');
    reading.mockRestore();
    expect(await kept('doc1')).toEqual(before);
    tab.kill();
    const after = await browser.open({ doc: 'doc1' });
    expect([stateOf(after).name, columnX(after)]).toEqual(['Small lot', 6.5]);
    expect((await after.keeping.list()).map(({ name }) => name).sort()).toEqual(['Sample', 'Small lot']);
  });

  test('is read again while the page is open: nothing was done, and the work comes back by itself', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const session = await worked();
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(fails(lostFile()));
    const tab = await browser.open(session);
    await sampleIn(tab);
    await pass(20_000);
    expect(stateOf(tab).name).toBe('Sample');
    reading.mockRestore();
    await pass(60_000);
    expect([stateOf(tab).name, columnX(tab)]).toEqual(['Small lot', 6.5]);
    expect(stateOf(tab).alerts).toEqual([]);
  });

  test('is read again after other work was begun, and offers what it has', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const session = await worked();
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(fails(lostFile()));
    const tab = await browser.open(session);
    await sampleIn(tab);
    move(tab, 9);
    reading.mockRestore();
    await pass(60_000);
    expect(stateOf(tab).name).toBe('Sample');
    const [alert] = stateOf(tab).alerts;
    expect(alert?.says).toBe('The sites that this browser keeps can be read again. “Small lot” was the last.');
    alert?.acts?.[0]?.act();
    await settle();
    expect(stateOf(tab).name).toBe('Small lot');
  });

  test('that never answers is given up in time', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const session = await worked();
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(() => silent);
    const opening = browser.open(session);
    await settle();
    await vi.advanceTimersByTimeAsync(6_000);
    const tab = await opening;
    expect(tab.keeping.resumed).toBe(false);
    expect(stateOf(tab).alerts[0]?.says).toMatch(/does not answer/);
    await sampleIn(tab);
    move(tab);
    await settle();
    expect(stateOf(tab).keeping.kind).toBe('kept');
    reading.mockRestore();
    expect((await kept('doc2')).log).toHaveLength(1);
  });

  test('an untouched sample that stood in for the work does not come before it at the next start', async () => {
    const session = await worked();
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(fails(lostFile()));
    const tab = await browser.open(session);
    await sampleIn(tab);
    tab.kill();
    reading.mockRestore();
    expect(stateOf(await browser.open(session)).name).toBe('Small lot');
  });

  test('a kept site that cannot be read just now is told, and the open one stands', async () => {
    const tab = await opened();
    move(tab);
    await stateOf(tab).openFile({ ...SMALL, name: 'second' });
    move(tab);
    await tab.keeping.flush();
    const old = (await tab.keeping.list()).find(({ name }) => name === 'Small lot')!;
    const real = IDBObjectStore.prototype.getAll;
    const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(function (
      this: IDBObjectStore,
      ...rest
    ) {
      if (this.name === 'log') throw lostFile();
      return real.apply(this, rest as never);
    });
    expect(await tab.keeping.reopen(old.doc)).toBe(false);
    expect(stateOf(tab).notice).toBe(
      '“Small lot” could not be read (Failed to read large IndexedDB value). Nothing of it was changed; try again.',
    );
    expect(stateOf(tab).name).toBe('second');
    reading.mockRestore();
    expect(await tab.keeping.reopen(old.doc)).toBe(true);
  });
});

describe('damaged records', () => {
  test('a document whose record is spoiled or gone is brought back from its copies and log', async () => {
    for (const spoil of ['spoil', 'delete'] as const) {
      const session = await worked();
      const doc = session.doc!;
      const database = await browser.look();
      if (spoil === 'delete') await database.delete('documents', doc);
      else await database.put('documents', { doc, name: 7 } as never);
      database.close();
      const tab = await browser.open(session);
      expect([stateOf(tab).name, columnX(tab), stateOf(tab).notice]).toEqual(['Small lot', 6.5, undefined]);
      move(tab);
      await tab.keeping.flush();
      expect((await kept(doc)).record).toMatchObject({ name: 'Small lot', seq: 3 });
      tab.kill();
    }
  });

  test('a copy that still reads as a site, but is not what was written, is not taken where there is another', async () => {
    const session = await worked();
    const doc = session.doc!;
    const changed = async (seq: number): Promise<void> => {
      const database = await browser.look();
      const record = (await database.get('snapshots', [doc, seq]))!;
      await database.put('snapshots', { ...record, text: record.text.replace('"size": [1, 1]', '"size": [1, 7]') });
      database.close();
    };
    const again = await browser.open(session);
    move(again);
    await again.keeping.flush();
    again.kill();
    await changed(3);
    const tab = await browser.open(session);
    expect([stateOf(tab).file.columns?.[0]?.size, columnX(tab)]).toEqual([[1, 1], 7.5]);
    tab.kill();
    await changed(0);
    const last = await browser.open(session);
    expect(stateOf(last).alerts.map(({ says }) => says)).toEqual([
      '“Small lot” was damaged where it was kept, and no whole copy is left. Look it over before you rely on it.',
    ]);
    expect(columnX(last)).toBe(7.5);
  });
});
