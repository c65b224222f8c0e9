import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { writeSite } from '../../../routing/site/write.ts';
import { moveElements } from '../../../web/document/edits/move.ts';
import { nameSite } from '../../../web/document/edits/set.ts';
import { ENTRIES_PER_SNAPSHOT, MS_PER_SNAPSHOT } from '../../../web/document/journal.ts';
import { keepSites } from '../../../web/document/storage.ts';
import type { LogRecord, SnapshotRecord } from '../../../web/document/storage-records.ts';
import { createDocumentStore } from '../../../web/document/store.ts';
import { WAIT_MS } from '../../../web/document/writer.ts';
import { anyGesture, editOf } from './any-edit.ts';
import { FakeBrowser, settle, type Tab } from './fake-browser.ts';
import { SMALL } from './small-site.ts';

const stateOf = ({ store }: Tab) => store.getState();
const textOf = (tab: Tab): string => writeSite(stateOf(tab).committed().file);
const move = (tab: Tab, dx = 1): void => {
  const { file } = stateOf(tab).committed();
  stateOf(tab).apply(moveElements(file, [{ list: 'columns', id: 'C1' }], dx, 0));
};
const columnX = (tab: Tab): number | undefined => stateOf(tab).file.columns?.[0]?.at[0];

let browser: FakeBrowser;
beforeEach(() => {
  browser = new FakeBrowser();
});
afterEach(async () => {
  browser.end();
  vi.useRealTimers();
  // What a killed tab had handed over is still being written: the next test must not see it.
  await settle();
  vi.restoreAllMocks();
});

async function opened(): Promise<Tab> {
  const tab = await browser.open();
  await stateOf(tab).openFile(SMALL);
  await settle();
  return tab;
}

describe('a tab that is closed and opened again', () => {
  test('finds the site, and the past can still be taken back and done again', async () => {
    const before = await opened();
    move(before, 1);
    move(before, 2);
    stateOf(before).undo();
    before.leave();
    before.kill();
    const after = await browser.open();
    expect(after.keeping.resumed).toBe(true);
    expect(textOf(after)).toBe(textOf(before));
    expect([stateOf(after).undoName, stateOf(after).redoName]).toEqual(['Move column C1', 'Move column C1']);
    stateOf(after).redo();
    expect(columnX(after)).toBe(7.5);
    stateOf(after).undo();
    stateOf(after).undo();
    expect(stateOf(after).file).toEqual(SMALL);
  });

  test('knows whether the site is in a file of its own', async () => {
    const tab = await browser.open();
    await stateOf(tab).open(writeSite(SMALL), 'mine.site.json');
    await settle();
    tab.kill();
    const second = await browser.open();
    expect(stateOf(second).saved).toEqual({ inFile: true, fileName: 'mine.site.json' });
    move(second);
    second.leave();
    await settle();
    second.kill();
    const third = await browser.open();
    expect(stateOf(third).saved).toEqual({ inFile: false, fileName: 'mine.site.json' });
  });

  test('finds its own site, not the one that another tab had last', async () => {
    const session = { doc: null };
    const mine = await browser.open(session);
    await stateOf(mine).openFile({ ...SMALL, name: 'mine' });
    move(mine);
    await mine.keeping.flush();
    const other = await browser.open();
    await stateOf(other).openFile({ ...SMALL, name: 'other' });
    await settle();
    mine.kill();
    expect(stateOf(await browser.open(session)).name).toBe('mine');
  });

  test('with nothing kept, says so and keeps nothing until a site is opened', async () => {
    const tab = await browser.open();
    expect(tab.keeping.resumed).toBe(false);
    expect(stateOf(tab).keeping.kind).toBe('off');
    await settle();
    expect(await (await browser.look()).count('documents')).toBe(0);
  });
});

describe('crash drills', () => {
  test('killed at any point, what comes back is the last kept document or a later one, with its whole past', async () => {
    const happening = fc.oneof(
      { weight: 6, arbitrary: anyGesture },
      { weight: 2, arbitrary: fc.constantFrom('undo', 'redo', 'flush', 'leave', 'tick') },
      { weight: 1, arbitrary: fc.constantFrom('kill', 'kill as it writes') },
    );
    await fc.assert(
      fc.asyncProperty(fc.array(happening, { minLength: 5, maxLength: 40 }), async (happenings) => {
        browser.end();
        browser = new FakeBrowser();
        let tab = await opened();
        // The texts since the last one that is known to be in the store.
        let possible = [textOf(tab)];
        for (const what of happenings) {
          if (typeof what === 'object') {
            const edit = editOf(stateOf(tab).file, what);
            if (edit && stateOf(tab).apply(edit)) possible.push(textOf(tab));
          } else if (what === 'undo' || what === 'redo') {
            stateOf(tab)[what]();
            possible.push(textOf(tab));
          } else if (what === 'flush') {
            await tab.keeping.flush();
            possible = [textOf(tab)];
          } else if (what === 'leave') {
            tab.leave();
            possible = [textOf(tab)];
          } else if (what === 'tick') browser.now += 20_000;
          else {
            if (what === 'kill as it writes') void tab.keeping.flush();
            tab.kill();
            tab = await browser.open();
            expect(possible).toContain(textOf(tab));
            possible = [textOf(tab)];
          }
        }
        const { done } = stateOf(tab).committed();
        for (const _ of done) stateOf(tab).undo();
        expect(stateOf(tab).file).toEqual(SMALL);
      }),
      { numRuns: 25 },
    );
  });

  test('the clock set back costs nothing', async () => {
    const tab = await opened();
    for (let i = 0; i < 5; i++) {
      browser.now -= 3_600_000;
      move(tab);
      await tab.keeping.flush();
    }
    tab.kill();
    expect(columnX(await browser.open())).toBe(9.5);
  });

  test('a transaction that is aborted is made good by the next', async () => {
    const tab = await opened();
    move(tab, 1);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore) {
      this.transaction.abort();
      throw new DOMException('aborted', 'AbortError');
    });
    await tab.keeping.flush();
    expect(stateOf(tab).keeping.kind).toBe('failed');
    put.mockRestore();
    move(tab, 2);
    await tab.keeping.flush();
    expect(stateOf(tab).keeping.kind).toBe('kept');
    tab.kill();
    const after = await browser.open();
    expect(columnX(after)).toBe(7.5);
    stateOf(after).undo();
    stateOf(after).undo();
    expect(stateOf(after).file).toEqual(SMALL);
  });

  test('a full disk is said, with what to do, and editing goes on', async () => {
    const tab = await opened();
    const full = (): never => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    const [add, put] = [vi.spyOn(IDBObjectStore.prototype, 'add'), vi.spyOn(IDBObjectStore.prototype, 'put')];
    add.mockImplementation(full);
    put.mockImplementation(full);
    move(tab);
    await tab.keeping.flush();
    const { kind, says } = stateOf(tab).keeping;
    expect([kind, says]).toEqual([
      'failed',
      'The browser has no room left to keep this site. Save the site to a file now.',
    ]);
    move(tab);
    expect(columnX(tab)).toBe(6.5);
    expect(stateOf(tab).keeping.kind).toBe('failed');
  });
});

describe('when it is written', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  });

  test('not before the loading of what was kept has ended', async () => {
    const before = await opened();
    move(before, 3);
    before.leave();
    await settle();
    before.kill();
    const written = vi.spyOn(IDBObjectStore.prototype, 'put');
    const tab = await browser.open();
    await vi.advanceTimersByTimeAsync(10 * WAIT_MS);
    await settle();
    expect(written).not.toHaveBeenCalled();
    expect(columnX(tab)).toBe(7.5);
  });

  test('a site that is opened while what was kept is loading stands, beside the one that was kept', async () => {
    const before = await opened();
    move(before, 3);
    await before.keeping.flush();
    before.kill();
    const store = createDocumentStore({ warm: async () => {} });
    const world = browser.world({ doc: null });
    let load = (): void => {};
    const gate = new Promise<void>((go) => (load = go));
    const starting = keepSites(store, {
      ...world,
      openDatabase: async (onClosed) => {
        await gate;
        return world.openDatabase(onClosed);
      },
    });
    await store.getState().openFile({ ...SMALL, name: 'opened early' });
    store.getState().apply(nameSite(store.getState().file, 'and changed'));
    load();
    const keeping = await starting;
    await settle();
    expect([keeping.resumed, store.getState().name]).toEqual([true, 'and changed']);
    expect((await keeping.list()).map(({ name, edits }) => [name, edits]).sort()).toEqual([
      ['Small lot', 1],
      ['and changed', 1],
    ]);
    world.kill();
    const after = await browser.open();
    expect(stateOf(after).name).toBe('and changed');
  });

  test('a moment after a change, several changes at once', async () => {
    const tab = await opened();
    const added = vi.spyOn(IDBObjectStore.prototype, 'add');
    move(tab);
    move(tab);
    await vi.advanceTimersByTimeAsync(WAIT_MS - 10);
    expect(added).not.toHaveBeenCalled();
    expect(stateOf(tab).keeping.kind).toBe('writing');
    await vi.advanceTimersByTimeAsync(20);
    await settle();
    expect(added).toHaveBeenCalledTimes(2);
    expect(stateOf(tab).keeping.kind).toBe('kept');
  });

  test('at once when the page is about to go', async () => {
    const tab = await opened();
    move(tab);
    tab.leave();
    tab.kill();
    expect(columnX(await browser.open())).toBe(5.5);
  });

  test('in haste only what is new: a snapshot that is due is left for the next writing', async () => {
    const before = await opened();
    before.leave();
    await settle();
    before.kill();
    const tab = await browser.open();
    await settle();
    const [added, put] = [vi.spyOn(IDBObjectStore.prototype, 'add'), vi.spyOn(IDBObjectStore.prototype, 'put')];
    move(tab);
    tab.leave();
    expect([added.mock.calls.length, put.mock.calls.length]).toEqual([1, 1]);
    await settle();
    move(tab);
    await tab.keeping.flush();
    expect([added.mock.calls.length, put.mock.calls.length]).toEqual([2, 3]);
  });

  test('what the hand holds during a drag is not written', async () => {
    const tab = await opened();
    stateOf(tab).preview(moveElements(SMALL, [{ list: 'columns', id: 'C1' }], 9, 0));
    tab.leave();
    await settle();
    tab.kill();
    expect(stateOf(await browser.open()).file).toEqual(SMALL);
  });
});

describe('what is written', () => {
  const all = async (): Promise<{ snapshots: SnapshotRecord[]; log: LogRecord[] }> => {
    const database = await browser.look();
    return { snapshots: await database.getAll('snapshots'), log: await database.getAll('log') };
  };

  test('one small record for each change; two snapshots at most, and the log since the older', async () => {
    const tab = await opened();
    for (let i = 0; i < 3 * ENTRIES_PER_SNAPSHOT; i++) {
      move(tab, i % 2 === 0 ? 1 : -1);
      if (i % 20 === 0) await tab.keeping.flush();
    }
    await tab.keeping.flush();
    const { snapshots, log } = await all();
    expect(snapshots).toHaveLength(2);
    const [older, newer] = snapshots.map(({ seq }) => seq);
    expect(newer! - older!).toBeGreaterThanOrEqual(ENTRIES_PER_SNAPSHOT);
    expect(log.map(({ seq }) => seq)).toEqual(
      Array.from({ length: 3 * ENTRIES_PER_SNAPSHOT - older! }, (_, i) => older! + 1 + i),
    );
  });

  test('a snapshot is made with the first change after a minute', async () => {
    const tab = await opened();
    move(tab);
    await tab.keeping.flush();
    expect((await all()).snapshots).toHaveLength(1);
    browser.now += MS_PER_SNAPSHOT;
    move(tab);
    await tab.keeping.flush();
    expect((await all()).snapshots.map(({ seq }) => seq)).toEqual([0, 2]);
  });

  test('the newest site of many is kept, and those that nobody changed are not', async () => {
    const tab = await opened();
    for (let i = 0; i < 20; i++) {
      await stateOf(tab).openFile({ ...SMALL, name: `lot ${i}` });
      if (i !== 5) move(tab);
      browser.now += 1000;
      await settle();
    }
    const names = (await tab.keeping.list()).map(({ name }) => name);
    expect(names).toEqual(Array.from({ length: 12 }, (_, i) => `lot ${19 - i}`));
    const database = await browser.look();
    expect(new Set((await database.getAll('snapshots')).map(({ doc }) => doc)).size).toBe(12);
  });

  test('a site of the list is opened again with its past', async () => {
    const tab = await opened();
    move(tab);
    await stateOf(tab).openFile({ ...SMALL, name: 'second' });
    await settle();
    const first = (await tab.keeping.list()).find(({ name }) => name === 'Small lot');
    expect(await tab.keeping.reopen(first!.doc)).toBe(true);
    expect([columnX(tab), stateOf(tab).undoName]).toEqual([5.5, 'Move column C1']);
    move(tab);
    await tab.keeping.flush();
    tab.kill();
    expect(columnX(await browser.open())).toBe(6.5);
    expect(await tab.keeping.reopen('gone').catch(() => false)).toBe(false);
  });
});

describe('a store that was spoiled', () => {
  /** A document with two snapshots and a log after both, in a tab that has gone. */
  async function spoiled(spoil: (record: { snapshots: SnapshotRecord[]; log: LogRecord[] }) => void): Promise<Tab> {
    const tab = await opened();
    for (let i = 0; i < 3; i++) {
      move(tab);
      await tab.keeping.flush();
      browser.now += MS_PER_SNAPSHOT;
    }
    browser.now -= MS_PER_SNAPSHOT;
    move(tab);
    await tab.keeping.flush();
    tab.kill();
    const database = await browser.look();
    const records = { snapshots: await database.getAll('snapshots'), log: await database.getAll('log') };
    expect(records.snapshots.map(({ seq }) => seq)).toEqual([2, 3]);
    spoil(records);
    await database.clear('snapshots');
    await database.clear('log');
    for (const snapshot of records.snapshots) await database.put('snapshots', snapshot);
    for (const entry of records.log) await database.put('log', entry);
    database.close();
    return browser.open();
  }

  test('with the newest snapshot unreadable, the older one and its log give the same document', async () => {
    const tab = await spoiled(({ snapshots }) => {
      snapshots[1] = { ...snapshots[1]!, text: '{"format":' };
    });
    expect(columnX(tab)).toBe(8.5);
    expect(stateOf(tab).notice).toBeUndefined();
  });

  test('with a past that does not fit, the document comes back without it', async () => {
    const tab = await spoiled(({ snapshots, log }) => {
      for (const snapshot of snapshots)
        Object.assign(snapshot, { done: [{ name: 'x', steps: [{ ...log.at(-1)!.edit.steps[0], id: 'C77' }] }] });
    });
    expect(columnX(tab)).toBe(8.5);
    stateOf(tab).undo();
    stateOf(tab).undo();
    expect(columnX(tab)).toBe(7.5);
  });

  test('with an entry missing, what came before it is kept as a site of its own, and the loss is said', async () => {
    const tab = await spoiled(({ log }) =>
      log.splice(
        log.findIndex(({ seq }) => seq === 4),
        1,
      ),
    );
    expect(columnX(tab)).toBe(7.5);
    expect(stateOf(tab).notice).toBe('The last change of “Small lot” could not be brought back.');
    move(tab, 10);
    await tab.keeping.flush();
    expect((await tab.keeping.list()).map(({ edits }) => edits).sort()).toEqual([4, 4]);
    tab.kill();
    expect(columnX(await browser.open())).toBe(17.5);
  });

  test('an entry that makes no valid site is not taken', async () => {
    const tab = await spoiled(({ log }) => {
      const last = log.at(-1)!;
      const [step] = last.edit.steps;
      if (step?.kind !== 'change') expect.fail('the entry is no change');
      const steps = [{ ...step, after: { ...step.after, id: 'D1' } }];
      log[log.length - 1] = { ...last, edit: { ...last.edit, steps } };
    });
    expect(columnX(tab)).toBe(7.5);
    expect(stateOf(tab).notice).toMatch(/last change/);
  });

  test('with nothing readable, nothing is put over it, and what is left can be had as text', async () => {
    const tab = await spoiled(({ snapshots }) => {
      for (const [i, snapshot] of snapshots.entries()) snapshots[i] = { ...snapshot, text: `spoiled ${i}` };
    });
    expect(tab.keeping.resumed).toBe(false);
    expect(stateOf(tab).notice).toBe(
      '“Small lot” could not be brought back. What is left of it can be downloaded as text.',
    );
    await stateOf(tab).openFile({ ...SMALL, name: 'another' });
    await settle();
    const old = (await tab.keeping.list()).find(({ name }) => name === 'Small lot');
    expect(await tab.keeping.textsOf(old!.doc)).toEqual(['spoiled 1', 'spoiled 0']);
  });

  test('whatever stands in the store, opening the page does not fail', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.object(), { maxLength: 4 }),
        fc.array(fc.object(), { maxLength: 4 }),
        async (snapshots, log) => {
          browser.end();
          browser = new FakeBrowser();
          const database = await browser.look();
          await database.put('documents', { doc: 'd', name: 'n', seq: 3, edits: 3, at: 0 });
          for (const [seq, value] of snapshots.entries())
            await database.put('snapshots', { ...value, doc: 'd', seq } as never);
          for (const [seq, value] of log.entries()) await database.put('log', { ...value, doc: 'd', seq } as never);
          await database.put('documents', { doc: 'odd', name: 7 } as never);
          database.close();
          const tab = await browser.open();
          expect(tab.keeping.resumed).toBe(false);
          tab.kill();
        },
      ),
      { numRuns: 20 },
    );
  });

  test('a store that the browser has cleared is noticed', async () => {
    const tab = await opened();
    move(tab);
    move(tab);
    await tab.keeping.flush();
    tab.kill();
    browser.clear();
    const after = await browser.open();
    expect(after.keeping.resumed).toBe(false);
    const said = /^This browser has cleared “Small lot” with its 2 changes/;
    expect(stateOf(after).notice).toMatch(said);
    await stateOf(after).openFile({ ...SMALL, name: 'a sample' });
    expect(stateOf(after).notice).toMatch(said);
    await stateOf(after).openFile({ ...SMALL, name: 'another' });
    expect(stateOf(after).notice).toBeUndefined();
  });
});

describe('a store that cannot be had', () => {
  test('a page without one can still be worked in, and says that it keeps nothing', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('denied', 'SecurityError');
    });
    const tab = await opened();
    move(tab);
    expect(columnX(tab)).toBe(5.5);
    expect(stateOf(tab).keeping).toMatchObject({
      kind: 'failed',
      says: expect.stringMatching(/Save the site to a file now/),
    });
  });

  test('a store that does not answer does not keep the page from opening', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const store = createDocumentStore({ warm: async () => {} });
    const starting = keepSites(store, { ...browser.world({ doc: null }), openDatabase: () => new Promise(() => {}) });
    await vi.advanceTimersByTimeAsync(10_000);
    expect((await starting).resumed).toBe(false);
    expect(store.getState().keeping).toMatchObject({ kind: 'failed', says: expect.stringMatching(/does not answer/) });
  });

  test('a page that is older than the store keeps its hands off it', async () => {
    const before = await opened();
    move(before);
    await before.keeping.flush();
    before.kill();
    await new Promise((resolve) => {
      indexedDB.open('overrow', 99).onsuccess = resolve;
    });
    const tab = await browser.open();
    expect(stateOf(tab).keeping.says).toMatch(/newer version/);
    await stateOf(tab).openFile({ ...SMALL, name: 'unkept' });
    move(tab);
    await tab.keeping.flush();
    expect(tab.keeping.resumed).toBe(false);
  });

  test('a page that a newer one pushes aside stops writing and says so', async () => {
    const tab = await opened();
    await new Promise((resolve) => {
      indexedDB.open('overrow', 99).onsuccess = resolve;
    });
    expect(stateOf(tab).keeping).toMatchObject({
      kind: 'failed',
      says: expect.stringMatching(/newer version of this page/),
    });
    move(tab);
    await tab.keeping.flush();
    expect(columnX(tab)).toBe(5.5);
    expect(stateOf(tab).keeping.kind).toBe('failed');
  });

  test('where the browser may clear the store, it is said once something is in it', async () => {
    browser.persists = false;
    const tab = await opened();
    expect(stateOf(tab).keeping).toEqual({ kind: 'kept' });
    move(tab);
    await tab.keeping.flush();
    await settle();
    expect(stateOf(tab).keeping).toMatchObject({ kind: 'kept', says: expect.stringMatching(/save to a file as well/) });
  });
});

describe('two tabs with one site', () => {
  test('the second follows the first and edits nothing', async () => {
    const first = await opened();
    move(first);
    await first.keeping.flush();
    const second = await browser.open();
    expect(stateOf(second).keeping.kind).toBe('watching');
    move(second);
    expect(columnX(second)).toBe(5.5);
    stateOf(second).select([{ list: 'columns', id: 'C1' }]);
    move(first, 2);
    stateOf(first).undo();
    move(first, 3);
    await first.keeping.flush();
    await settle();
    expect(columnX(second)).toBe(8.5);
    expect(stateOf(second).selection).toHaveLength(1);
    expect(stateOf(second).undoName).toBe('Move column C1');
  });

  test('taken over, the first has written everything and follows the second', async () => {
    const first = await opened();
    const second = await browser.open();
    move(first, 1);
    stateOf(second).keeping.takeOver?.();
    await settle();
    expect([stateOf(first).keeping.kind, stateOf(second).keeping.kind]).toEqual(['watching', 'kept']);
    expect(columnX(second)).toBe(5.5);
    move(second, 2);
    await second.keeping.flush();
    await settle();
    expect(columnX(first)).toBe(7.5);
    move(first);
    expect(columnX(first)).toBe(7.5);
    second.kill();
    first.kill();
    expect(columnX(await browser.open())).toBe(7.5);
  });

  test('when the first is closed, the second edits', async () => {
    const first = await opened();
    const second = await browser.open();
    await new Promise((resolve) => setTimeout(resolve, 10));
    move(first);
    await first.keeping.flush();
    await first.keeping.stop();
    await settle();
    expect(stateOf(second).keeping.kind).toBe('kept');
    move(second);
    await second.keeping.flush();
    second.kill();
    expect(columnX(await browser.open())).toBe(6.5);
  });

  test('one that sleeps is taken over without an answer; what it could not write becomes a site of its own', async () => {
    const first = await opened();
    const second = await browser.open();
    await settle();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const refused = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('no', 'UnknownError');
    });
    move(first, 50);
    await first.keeping.flush();
    refused.mockRestore();
    first.freeze();
    stateOf(second).keeping.takeOver?.();
    await settle();
    expect(stateOf(second).keeping.kind).toBe('watching');
    await vi.advanceTimersByTimeAsync(2_000);
    await settle();
    expect(stateOf(second).keeping.kind).toBe('kept');
    expect(stateOf(first).notice).toMatch(/kept as a site of its own/);
    move(second, 1);
    await second.keeping.flush();
    expect([columnX(first), columnX(second)]).toEqual([54.5, 5.5]);
    first.kill();
    second.kill();
    const later = await browser.open();
    const xs: (number | undefined)[] = [];
    for (const { doc } of await later.keeping.list()) {
      await later.keeping.reopen(doc);
      xs.push(columnX(later));
    }
    expect(xs.sort()).toEqual([5.5, 54.5]);
  });

  test('without locks, the one whose write comes second goes on as a site of its own', async () => {
    browser.withLocks = false;
    const first = await opened();
    move(first, 1);
    await first.keeping.flush();
    const second = await browser.open();
    expect(stateOf(second).keeping.kind).toBe('kept');
    move(first, 10);
    await first.keeping.flush();
    move(second, 20);
    await second.keeping.flush();
    await settle();
    expect(stateOf(second).notice).toMatch(/kept as a site of its own/);
    expect([columnX(first), columnX(second)]).toEqual([15.5, 25.5]);
    const kept = await second.keeping.list();
    expect(kept).toHaveLength(2);
  });

  test('two tabs with two sites do not mind each other', async () => {
    const first = await opened();
    move(first);
    await first.keeping.flush();
    const second = await browser.open();
    await stateOf(second).openFile({ ...SMALL, name: 'other' });
    stateOf(second).apply(nameSite(stateOf(second).file, 'other lot'));
    await second.keeping.flush();
    move(first);
    await first.keeping.flush();
    await settle();
    expect([stateOf(first).keeping.kind, stateOf(second).keeping.kind]).toEqual(['kept', 'kept']);
    expect([stateOf(first).name, columnX(first), stateOf(second).name]).toEqual(['Small lot', 6.5, 'other lot']);
  });
});
