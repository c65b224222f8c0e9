import { beforeEach, describe, expect, test, vi } from 'vitest';
import { moveElements } from '../../../../web/document/edits/moving/move.ts';
import { nameSite } from '../../../../web/document/edits/set.ts';
import { WAIT_MS } from '../../../../web/document/keeping/roles/writer.ts';
import { keepSites } from '../../../../web/document/keeping/storage.ts';
import { MS_PER_SNAPSHOT } from '../../../../web/document/keeping/store/journal.ts';
import { createDocumentStore } from '../../../../web/document/store.ts';
import { SMALL } from '../small-site.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf } from './kept-tab.ts';

browserForEach();

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
