import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { writeSite } from '../../../../routing/site/file/write.ts';
import { anyGesture, editOf } from '../edits/any-edit.ts';
import { SMALL } from '../small-site.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, newBrowser, opened, stateOf, textOf } from './kept-tab.ts';

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
