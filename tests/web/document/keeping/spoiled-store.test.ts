import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { keepSites } from '../../../../web/document/keeping/storage.ts';
import { MS_PER_SNAPSHOT } from '../../../../web/document/keeping/store/journal.ts';
import type { LogRecord, SnapshotRecord } from '../../../../web/document/keeping/store/storage-records.ts';
import { createDocumentStore } from '../../../../web/document/store.ts';
import { SMALL } from '../small-site.ts';
import { settle, type Tab } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, newBrowser, opened, stateOf } from './kept-tab.ts';

browserForEach();

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
    const [alert] = stateOf(tab).alerts;
    expect(alert?.says).toBe('“Small lot” could not be brought back. What is left of it can be downloaded as text.');
    alert?.acts?.find(({ name }) => name === 'Download what is left')?.act();
    await settle();
    expect(tab.handedOut.map(({ fileName }) => fileName)).toEqual(['Small lot as kept.json']);
    const left = JSON.parse(tab.handedOut[0]!.text) as { snapshots: { text: string }[]; log: unknown[] };
    expect(left.snapshots.map(({ text }) => text)).toEqual(['spoiled 0', 'spoiled 1']);
    expect(left.log).toHaveLength(2);
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
          newBrowser();
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
