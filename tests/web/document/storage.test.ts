import fc from 'fast-check';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { writeSite } from '../../../routing/site/file/write.ts';
import { moveElements } from '../../../web/document/edits/move.ts';
import { nameSite } from '../../../web/document/edits/set.ts';
import { ENTRIES_PER_SNAPSHOT, MS_PER_SNAPSHOT } from '../../../web/document/keeping/journal.ts';
import { keepSites } from '../../../web/document/keeping/storage.ts';
import type { LogRecord, SnapshotRecord } from '../../../web/document/keeping/storage-records.ts';
import { WAIT_MS } from '../../../web/document/keeping/writer.ts';
import { createDocumentStore } from '../../../web/document/store.ts';
import { anyGesture, editOf } from './any-edit.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, newBrowser, opened, stateOf, textOf } from './kept-tab.ts';
import { SMALL } from './small-site.ts';

browserForEach();

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
        newBrowser();
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
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore) {
      this.transaction.abort();
      throw new DOMException('aborted', 'AbortError');
    });
    move(tab, 1);
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

  test('the first change after a rest at once, those that follow a moment later together', async () => {
    const tab = await opened();
    const added = vi.spyOn(IDBObjectStore.prototype, 'add');
    move(tab);
    expect(added).toHaveBeenCalledTimes(1);
    expect(stateOf(tab).keeping.kind).toBe('writing');
    await settle();
    expect(stateOf(tab).keeping.kind).toBe('kept');
    move(tab);
    move(tab);
    expect(stateOf(tab).keeping.kind).toBe('writing');
    await vi.advanceTimersByTimeAsync(WAIT_MS - 10);
    expect(added).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(20);
    await settle();
    expect(added).toHaveBeenCalledTimes(3);
    expect(stateOf(tab).keeping.kind).toBe('kept');
  });

  test('a tab that is killed right after a change has it, and has not said that it was kept before it was', async () => {
    const tab = await opened();
    move(tab);
    expect(stateOf(tab).keeping.kind).toBe('writing');
    tab.kill();
    expect(columnX(await browser.open())).toBe(5.5);
  });

  test('a whole copy that is due waits until the hand rests, but not for ever; the changes do not wait for it', async () => {
    const before = await opened();
    await before.keeping.stop();
    const tab = await browser.open();
    const database = await browser.look();
    const copies = async (): Promise<readonly number[]> => {
      await settle();
      return (await database.getAllKeys('snapshots')).map(([, seq]) => seq);
    };
    for (let i = 1; i <= 10; i++) {
      move(tab);
      await vi.advanceTimersByTimeAsync(500);
      expect([await copies(), await database.count('log')]).toEqual([[0], i]);
    }
    await vi.advanceTimersByTimeAsync(600);
    expect(await copies()).toEqual([0, 10]);
    browser.now += MS_PER_SNAPSHOT;
    for (let i = 0; i < 40; i++) {
      move(tab);
      await vi.advanceTimersByTimeAsync(500);
    }
    const last = await copies();
    expect(last).toHaveLength(2);
    expect(last[1]).toBeGreaterThan(10);
    database.close();
  });

  test('a second copy of the site follows within the first seconds, without a further change', async () => {
    const tab = await opened();
    move(tab);
    for (let i = 0; i < 90; i++) {
      browser.now += 100;
      await vi.advanceTimersByTimeAsync(100);
    }
    await settle();
    const database = await browser.look();
    expect((await database.getAllKeys('snapshots')).map(([, seq]) => seq)).toEqual([0, 1]);
    await database.put('snapshots', { ...(await database.get('snapshots', ['doc1', 1]))!, text: 'spoiled' });
    database.close();
    tab.kill();
    expect(columnX(await browser.open())).toBe(5.5);
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

  test('every site that was changed is kept, however many; one that nobody changed is not', async () => {
    const tab = await opened();
    for (let i = 0; i < 20; i++) {
      await stateOf(tab).openFile({ ...SMALL, name: `lot ${i}` });
      if (i !== 5) move(tab);
      browser.now += 1000;
      await settle();
    }
    const names = (await tab.keeping.list()).map(({ name }) => name);
    expect(names).toEqual(Array.from({ length: 20 }, (_, i) => `lot ${19 - i}`).filter((name) => name !== 'lot 5'));
    const database = await browser.look();
    expect(new Set((await database.getAll('snapshots')).map(({ doc }) => doc)).size).toBe(19);
  });

  test('a clock that was wrong changes neither the order nor what is kept', async () => {
    const tab = await opened();
    const days = 86_400_000;
    browser.now += 400 * days;
    for (let i = 0; i < 12; i++) {
      await stateOf(tab).openFile({ ...SMALL, name: `ahead ${i}` });
      move(tab);
      await settle();
    }
    browser.now -= 400 * days;
    await stateOf(tab).openFile({ ...SMALL, name: 'Newest work' });
    move(tab);
    await settle();
    await stateOf(tab).openFile({ ...SMALL, name: 'another' });
    move(tab);
    await settle();
    const names = (await tab.keeping.list()).map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['another', 'Newest work', 'ahead 11']);
    expect(names).toHaveLength(14);
    tab.kill();
    expect(stateOf(await browser.open()).name).toBe('another');
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
