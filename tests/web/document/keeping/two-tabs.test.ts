import { describe, expect, test, vi } from 'vitest';
import { nameSite } from '../../../../web/document/edits/set.ts';
import { SMALL } from '../small-site.ts';
import { settle } from './fake-browser.ts';
import { browser, browserForEach, columnX, move, opened, stateOf } from './kept-tab.ts';

browserForEach();

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
